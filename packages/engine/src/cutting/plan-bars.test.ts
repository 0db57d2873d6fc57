import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { valueOf } from '../floor/problem.js';
import { planBars } from './plan-bars.js';
import type { BarPlan, BarRequest } from './types.js';

const codes = (request: BarRequest): string[] => {
  const outcome = planBars(request);
  return outcome.ok ? [] : outcome.problems.map((p) => p.code);
};

/** Every piece cut once, every bar long enough, every off-cut right: counted from the plan, not by the planner. */
function expectCuttable(request: BarRequest, plan: BarPlan): void {
  const wanted = request.pieces.flatMap((p) => Array.from({ length: p.count }, () => p.mark)).sort();
  expect(plan.bars.flatMap((b) => b.pieces).sort()).toEqual(wanted);
  const lengthOf = new Map(request.pieces.map((p) => [p.mark, p.length]));
  for (const bar of plan.bars) {
    const net = bar.pieces.reduce((sum, mark) => sum + lengthOf.get(mark)!, 0);
    const sawn = net + (bar.pieces.length - 1) * request.kerf;
    const usable = bar.length - 2 * request.trim;
    expect(sawn).toBeLessThanOrEqual(usable + 1e-9);
    expect(bar.offcut).toBeCloseTo(Math.max(0, usable - sawn - request.kerf), 6);
  }
  request.stock.forEach((s, i) => {
    expect(plan.bars.filter((b) => b.stock === i).length).toBeLessThanOrEqual(s.available ?? Number.POSITIVE_INFINITY);
  });
}

// Arithmetic: three 1 m pieces fill 3 m without kerf; with a kerf of 4 mm only two come from a bar.
test.each([
  [0, 4],
  [0.004, 6],
])('twelve 1 m pieces from 3 m bars with a kerf of %d m take %d bars', (kerf, bars) => {
  const request: BarRequest = {
    pieces: [{ mark: 'a', length: 1, count: 12 }],
    stock: [{ length: 3 }],
    kerf,
    trim: 0,
    aim: 'bars',
  };
  const plan = valueOf(planBars(request));
  expect(plan.bars.length).toBe(bars);
  expect(plan.optimal).toBe(true);
  expectCuttable(request, plan);
});

test('trimmed ends are not sold as pieces', () => {
  const request: BarRequest = {
    pieces: [{ mark: 'a', length: 1, count: 3 }],
    stock: [{ length: 3 }],
    kerf: 0,
    trim: 0.005,
    aim: 'bars',
  };
  expect(valueOf(planBars(request)).bars.length).toBe(2);
});

test('a short bar is left unused where long ones are cheaper by the metre', () => {
  // By hand: two 2.9 m pieces come from one 6 m bar at 50, or from two 3 m bars at 60.
  const request: BarRequest = {
    pieces: [{ mark: 'a', length: 2.9, count: 2 }],
    stock: [
      { length: 3, price: 30 },
      { length: 6, price: 50 },
    ],
    kerf: 0.004,
    trim: 0,
  };
  const plan = valueOf(planBars(request));
  expect(plan.aim).toBe('price');
  expect(plan.cost).toBe(50);
  expect(plan.optimal).toBe(true);
});

test('an off-cut is used once and no more', () => {
  const request: BarRequest = {
    pieces: [{ mark: 'a', length: 0.9, count: 3 }],
    stock: [
      { length: 3, price: 1 },
      { length: 0.95, price: 0, available: 1 },
    ],
    kerf: 0.1,
    trim: 0,
  };
  const plan = valueOf(planBars(request));
  expect(plan.cost).toBe(1);
  expectCuttable(request, plan);
});

// Falkenauer, Journal of Heuristics 2 (1996), triplets: items of which three always fill a bar of 1000 exactly, so the
// optimum is n/3. Four triplets made by hand in the same way.
test('triplets that fill their bars exactly are found', () => {
  const triplets = [
    [366, 268, 366],
    [251, 260, 489],
    [333, 300, 367],
    [279, 310, 411],
  ].flat();
  const request: BarRequest = {
    pieces: triplets.map((mm, i) => ({ mark: `t${i}`, length: mm / 1000, count: 1 })),
    stock: [{ length: 1 }],
    kerf: 0,
    trim: 0,
    aim: 'bars',
  };
  const plan = valueOf(planBars(request));
  expect(plan.bars.length).toBe(4);
  expect(plan.optimal).toBe(true);
  expect(plan.yield).toBeCloseTo(1, 12);
});

/** Fewest bars by trying every set of the pieces: exact, slow and of another kind than the planner. */
function fewestBySubsets(lengths: readonly number[], bar: number, kerf: number): number {
  const all = (1 << lengths.length) - 1;
  const fits = (set: number) => {
    const chosen = lengths.filter((_, i) => set & (1 << i));
    return chosen.reduce((a, b) => a + b, 0) + (chosen.length - 1) * kerf <= bar;
  };
  const best = new Array<number>(all + 1).fill(Number.POSITIVE_INFINITY);
  best[0] = 0;
  for (let set = 1; set <= all; set++)
    for (let part = set; part > 0; part = (part - 1) & set)
      if (fits(part)) best[set] = Math.min(best[set]!, best[set ^ part]! + 1);
  return best[all]!;
}

describe('properties', () => {
  const mm = fc.integer({ min: 200, max: 2900 });

  test('short lists are as good as trying every set of pieces', () => {
    fc.assert(
      fc.property(fc.array(mm, { minLength: 1, maxLength: 8 }), fc.integer({ min: 0, max: 9 }), (lengths, kerf) => {
        const request: BarRequest = {
          pieces: lengths.map((l, i) => ({ mark: `p${i}`, length: l / 1000, count: 1 })),
          stock: [{ length: 3 }],
          kerf: kerf / 1000,
          trim: 0,
          aim: 'bars',
        };
        const plan = valueOf(planBars(request));
        expect(plan.bars.length).toBe(fewestBySubsets(lengths, 3000, kerf));
        expect(plan.optimal).toBe(true);
        expectCuttable(request, plan);
      }),
      { seed: 11, numRuns: 60 },
    );
  });

  test('several stock lengths: no piece lost, bound not above cost, same list same plan', () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ length: mm, count: fc.integer({ min: 0, max: 6 }) }), { minLength: 1, maxLength: 6 }),
        fc.integer({ min: 20, max: 60 }),
        (pieces, price) => {
          const request: BarRequest = {
            pieces: pieces.map((p, i) => ({ mark: `p${i}`, length: p.length / 1000, count: p.count })),
            stock: [
              { length: 3, price },
              { length: 6, price: 76 },
              { length: 2, price: 15, available: 2 },
            ],
            kerf: 0.004,
            trim: 0,
          };
          const plan = valueOf(planBars(request));
          expectCuttable(request, plan);
          expect(plan.bound).toBeLessThanOrEqual(plan.cost);
          expect(planBars(request)).toEqual(planBars(request));
        },
      ),
      { seed: 12, numRuns: 30 },
    );
  });
});

test('nothing to cut needs no bar', () => {
  expect(valueOf(planBars({ pieces: [], stock: [{ length: 3 }], kerf: 0, trim: 0 })).bars).toEqual([]);
});

describe('refusals', () => {
  const good: BarRequest = { pieces: [{ mark: 'a', length: 1, count: 1 }], stock: [{ length: 3 }], kerf: 0, trim: 0 };
  test.each([
    [{ ...good, pieces: [{ mark: 'a', length: 3.001, count: 1 }] }, 'cutting/piece-too-long'],
    [{ ...good, pieces: [{ mark: 'a', length: 0, count: 1 }] }, 'cutting/size'],
    [{ ...good, pieces: [{ mark: 'a', length: 1, count: 1.5 }] }, 'cutting/count'],
    [{ ...good, kerf: -0.001 }, 'cutting/allowance'],
    [{ ...good, trim: Number.NaN }, 'cutting/allowance'],
    [{ ...good, stock: [{ length: -1 }] }, 'cutting/size'],
    [{ ...good, stock: [] }, 'cutting/no-stock'],
    [{ ...good, aim: 'price' as const }, 'cutting/price'],
    [{ ...good, stock: [{ length: 3, available: 0 }] }, 'cutting/not-enough-stock'],
  ])('%#: %s', (request, code) => {
    expect(codes(request)).toContain(code);
  });
});
