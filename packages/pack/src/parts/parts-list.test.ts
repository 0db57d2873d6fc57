import { barJobs, cutPlans, type Item, type Part, packsFor, partsList, planBars, spareFor } from '@cloche/engine';
import { describe, expect, test } from 'vitest';
import { catalogue, design, rules } from '../../test/fixture.js';
import { cutList } from './cut-list.js';
import { mediumDeviation } from './tables.js';

const cuts = cutPlans(design, catalogue, rules);
const list = partsList(design, catalogue, rules, cuts);
const row = (partNumber: string) => list.rows.find((r) => r.partNumber === partNumber)!;

describe('the parts list', () => {
  test('holds every part of the design once', () => {
    const pieces = design.parts.reduce((sum, p) => sum + p.mass, 0);
    expect(list.massKg).toBeCloseTo(pieces, 9);
    const counted = list.rows.filter((r) => r.unit === 'H87').reduce((sum, r) => sum + r.qty, 0);
    const made = design.parts
      .filter((p) => !['profiles', 'track', 'panels'].includes(p.group))
      .reduce((sum, p) => sum + p.count, 0);
    expect(counted).toBe(made);
  });

  test('the total is the sum of the printed lines', () => {
    const cents = list.rows.reduce((sum, r) => sum + (r.linePrice ? Math.round(Number(r.linePrice) * 100) : 0), 0);
    expect(list.total).toBe((cents / 100).toFixed(2));
    expect(list.unpriced).toBe(1);
  });

  test('metres of profile are ordered as whole bars', () => {
    // 4 x 2.34 + 2 x 3.52 + 3 x 2.02 m; by hand: no bar of 6 m holds three of them, so five bars for nine pieces.
    expect(row('bar-40').qty).toBeCloseTo(22.46, 9);
    expect(row('bar-40').orderQty).toBe(30);
    expect(row('bar-40').linePrice).toBe('294.00');
  });

  test('spares stand apart and round up once with the packs', () => {
    // 80 screws + 5 % = 84, in packs of 50.
    expect([row('screw-m8').qty, row('screw-m8').spareQty, row('screw-m8').orderQty]).toEqual([80, 4, 100]);
    // 33 runners + at least 2, in packs of 10.
    expect([row('runner-c').spareQty, row('runner-c').orderQty]).toEqual([2, 40]);
  });

  test('track is priced by the stock pieces taken', () => {
    expect(row('rail-c').linePrice).toBe('56.00');
  });

  test('says of what day each price is, and what the project put in its place', () => {
    expect([row('bar-40').priceDate, row('bar-40').priceFrom]).toEqual([catalogue.priceDate, catalogue.priceBasis]);
    const own = { item: 'bar-40', size: null, price: { amount: '9.00', currency: 'EUR' }, before: null, because: null };
    const figure = {
      item: 'bar-40',
      field: 'massPerLength',
      before: 1.6,
      after: 1.7,
      written: '1.7 kg/m',
      because: 'x',
    };
    const amendments = {
      prices: [
        { ...own, on: '2026-11-02', from: 'offer 4711' },
        { ...own, item: 'not-used', on: '2026-11-02', from: 'x' },
      ],
      figures: [figure],
    };
    const made = partsList(design, { ...catalogue, amendments }, rules, cuts);
    const bar = made.rows.find((r) => r.partNumber === 'bar-40')!;
    expect([bar.priceDate, bar.priceFrom]).toEqual(['2026-11-02', 'offer 4711']);
    expect(bar.remarks).toContain('massPerLength changed to 1.7 kg/m for this project: x');
    expect(made.amendments.prices.map((p) => p.item)).toEqual(['bar-40']);
  });

  test('an item that the catalogue lost is listed and says so', () => {
    const lost = { ...catalogue, byId: new Map([...catalogue.byId].filter(([id]) => id !== 'foot-40')) };
    const found = partsList(design, lost, rules, cutPlans(design, lost, rules)).rows.find(
      (r) => r.partNumber === 'foot-40',
    )!;
    expect(found.qty).toBe(4);
    expect(found.remarks).toContain('not in the catalogue');
  });
});

// Handbook of deliverables 2.2: ceil((qty + spare)/pack - 1e-9); spares 5 % and at least 2.
test.each([
  [100, 50, 2],
  [101, 50, 3],
  [0, 50, 0],
])('%i pieces in packs of %i are %i packs', (pieces, pack, packs) => {
  expect(packsFor(pieces, pack)).toBe(packs);
});
test.each([
  [80, 0.05, 4],
  [10, 0.05, 2],
  [0, 0.05, 0],
  [10, 0, 0],
])('%i pieces at %d are %i spares', (qty, share, spares) => {
  expect(spareFor(qty, share)).toBe(spares);
});

describe('the cut list', () => {
  const cut = cutList(cuts, rules);

  test('loses no piece: marks on the bars are the pieces of the design', () => {
    const sized = design.parts.filter((p) => ['profiles', 'track', 'panels'].includes(p.group));
    expect(cut.rows.reduce((sum, r) => sum + r.qty, 0)).toBe(sized.reduce((sum, p) => sum + p.count, 0));
    const fromBars = cut.rows.map((r) => [...r.from.matchAll(/\((\d+)\)/g)].reduce((sum, m) => sum + Number(m[1]), 0));
    expect(fromBars).toEqual(cut.rows.map((r) => r.qty));
  });

  test('is sorted by item, falling length, mark', () => {
    expect(cut.rows.map((r) => r.mark)).toEqual(['T1', 'T2', 'B1', 'P1', 'B2', 'S1']);
  });

  test('marks off-cuts that are worth keeping', () => {
    const bars = cut.stock.filter((s) => s.kind === 'bar');
    expect(bars.every((b) => b.keep === b.offcutMm! >= 300)).toBe(true);
  });

  test("takes the bars of the engine's plan, so that findings name the same ones", () => {
    const jobs = barJobs({ design, catalogue, rules });
    expect(jobs.map((job) => job.item)).toEqual(['bar-40', 'rail-c']);
    for (const { name, request } of jobs) {
      const plan = planBars(request);
      const taken = cut.stock.filter((s) => s.name === name).map((s) => s.lengthMm / 1000);
      expect(plan.ok && plan.value.bars.map((bar) => bar.length)).toEqual(taken);
    }
  });

  test('a flexible strip longer than its stock is laid end to end, each length in the list', () => {
    const strip = { id: 'strip-8', name: 'Cover, slot', kind: 'slot cover', stockLengths: [2], mass: 0.1 };
    const part = {
      ...design.parts.find((p) => p.group === 'profiles')!,
      ...{ id: 'box.cover-1', item: 'strip-8', group: 'strips', role: 'slot cover', length: 4.5, mass: 0.9 },
    } as Part;
    const long = (mark?: string) => {
      const { mark: _, ...unmarked } = part;
      const parts = [mark === undefined ? unmarked : { ...unmarked, mark }];
      const byId = new Map<string, Item>([['strip-8', strip as unknown as Item]]);
      return cutList(cutPlans({ ...design, parts }, { ...catalogue, byId }, rules), rules);
    };
    // By hand: 4.5 m are two whole lengths of 2 m and 0.5 m, on three bars; the mass is shared out by length.
    expect(long('O1').rows.map((r) => [r.mark, r.lengthMm, r.qty, r.massKg, r.from, r.operations])).toEqual([
      ['O1 whole', 2000, 2, expect.closeTo(0.8, 9), '1 (1), 2 (1)', 'laid end to end'],
      ['O1 rest', 500, 1, expect.closeTo(0.1, 9), '3 (1)', 'laid end to end'],
    ]);
    // Without a mark of its own a piece goes by item and length, in list and plan alike.
    expect(long().rows.map((r) => r.mark)).toEqual(['strip-8 2000', 'strip-8 500']);
    expect(long().stock.map((s) => s.pieces)).toEqual(['1 × strip-8 2000', '1 × strip-8 2000', '1 × strip-8 500']);
  });

  test('a piece longer than its stock has no plan, and the lists say why', () => {
    const long = {
      ...design,
      parts: design.parts.map((p) => (p.id === 'box-beam-0' ? { ...p, length: 7, mark: 'B9' } : p)),
    };
    const plans = cutPlans(long, catalogue, rules);
    expect(cutList(plans, rules).summary.find((s) => s.partNumber === 'bar-40')!.words).toMatch(/^No plan: .*B9/);
    const found = partsList(long, catalogue, rules, plans).rows.find((r) => r.partNumber === 'bar-40')!;
    expect([found.orderQty, found.linePrice]).toEqual([null, null]);
  });
});

// ISO 2768-1:1989, Table 1, class m (published): ranges "over ... to".
test.each([
  [6, 0.1],
  [30, 0.2],
  [120, 0.3],
  [120.1, 0.5],
  [400, 0.5],
  [1000, 0.8],
  [2000, 1.2],
  [4000, 2],
  [4000.1, null],
  [0.4, null],
])('a length of %d mm may deviate by %s mm', (nominal, deviation) => {
  expect(mediumDeviation(nominal)).toBe(deviation);
});
