import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import { readBrief } from '../brief/read.js';
import { designFrom } from '../design-from.js';
import { type Problem, valueOf } from '../floor/problem.js';
import { amendCatalogue } from './amend.js';
import { readCatalogue } from './read.js';

const repository = new URL('../../../../', import.meta.url);
const read = (path: string) => readFileSync(new URL(path, repository), 'utf8');
const files = readdirSync(new URL('catalogue/', repository))
  .filter((name) => name.endsWith('.yaml'))
  .map((name) => ({ name, text: read(`catalogue/${name}`) }));
const catalogue = valueOf(readCatalogue(files));
const ruleTexts = { eu: read('rules/eu.yaml') };

const offer = { on: '2026-11-02', from: 'offer 4711' };
const eur = (amount: string) => ({ amount, currency: 'EUR' });
const trackOf = catalogue.items.find((i) => i.kind === 'track')!;
const clothOf = catalogue.items.find((i) => i.kind === 'cloth')!;
const casterOf = catalogue.items.find((i) => i.kind === 'caster')!;

const told = (problems: readonly Problem[]) => problems.map(({ code, path }) => [code, path.join('.')]);
const refusals = (input: Parameters<typeof amendCatalogue>[1]) => {
  const made = amendCatalogue(catalogue, input);
  return made.ok ? [] : told(made.problems);
};

describe('a catalogue that a project amends', () => {
  test('is itself while there is nothing to amend', () => {
    expect(valueOf(amendCatalogue(catalogue, {}))).toBe(catalogue);
    expect(valueOf(amendCatalogue(catalogue, { prices: [], changes: [] }))).toBe(catalogue);
  });

  test('takes the price of an offer and keeps its day and origin', () => {
    const made = valueOf(
      amendCatalogue(catalogue, { prices: [{ item: 'profile-30x30', price: eur('9.99'), per: 'm', ...offer }] }),
    );
    const item = made.byId.get('profile-30x30')!;
    expect('price' in item && item.price).toEqual(eur('9.99'));
    expect(made.amendments!.prices).toEqual([
      {
        item: 'profile-30x30',
        size: null,
        price: eur('9.99'),
        // As in the demo catalogue.
        before: eur('11.40'),
        on: '2026-11-02',
        from: 'offer 4711',
        because: null,
      },
    ]);
    expect(made.hash).not.toBe(catalogue.hash);
    const before = catalogue.byId.get('profile-30x30')!;
    expect('price' in before && before.price).toEqual(eur('11.40'));
  });

  test('takes prices of stock pieces and panels by their size', () => {
    if (trackOf.kind !== 'track' || clothOf.kind !== 'cloth') throw new Error('the demo catalogue has both');
    const [length, width] = [trackOf.stock[0]!.length, clothOf.widths[0]!.width];
    const made = valueOf(
      amendCatalogue(catalogue, {
        prices: [
          { item: trackOf.id, price: eur('1.00'), per: `${length} m`, ...offer },
          { item: clothOf.id, price: eur('2.00'), per: `${width * 1000} mm`, ...offer },
        ],
      }),
    );
    const [track, cloth] = [made.byId.get(trackOf.id)!, made.byId.get(clothOf.id)!];
    expect(track.kind === 'track' && track.stock[0]!.price).toEqual(eur('1.00'));
    expect(track.kind === 'track' && track.stock[1]).toEqual(trackOf.stock[1]);
    expect(cloth.kind === 'cloth' && cloth.widths[0]!.price).toEqual(eur('2.00'));
  });

  test('takes a figure in its own unit and says what it was', () => {
    const change = { item: casterOf.id, field: 'capacity', value: '150 kg', because: 'data sheet of 2026' };
    const made = valueOf(amendCatalogue(catalogue, { changes: [change] }));
    const item = made.byId.get(casterOf.id)!;
    expect('capacity' in item && item.capacity).toBe(150);
    expect(made.amendments!.figures[0]).toMatchObject({
      after: 150,
      before: 'capacity' in casterOf && casterOf.capacity,
      written: '150 kg',
      because: 'data sheet of 2026',
    });
  });

  test('takes a figure inside a record', () => {
    const change = { item: trackOf.id, field: 'supportSpacing.ceiling', value: '45 cm', because: 'soft ceiling' };
    const item = valueOf(amendCatalogue(catalogue, { changes: [change] })).byId.get(trackOf.id)!;
    expect(item.kind === 'track' && item.supportSpacing.ceiling).toBe(0.45);
  });

  const price = { item: 'profile-30x30', price: eur('1.00'), ...offer };
  const change = { item: casterOf.id, field: 'capacity', value: '150 kg', because: 'x' };
  test.each([
    [{ prices: [{ ...price, item: 'profile-30x31' }] }, 'catalogue/unknown-item', 'prices.0.item'],
    [
      { prices: [{ ...price, price: { amount: '1.00', currency: 'CHF' } }] },
      'catalogue/mixed-currencies',
      'prices.0.price',
    ],
    [{ prices: [{ ...price, per: 'piece' }] }, 'catalogue/price-unit', 'prices.0.per'],
    [{ prices: [{ ...price, item: trackOf.id }] }, 'catalogue/price-unit', 'prices.0.per'],
    [{ prices: [{ ...price, item: trackOf.id, per: '77 mm' }] }, 'catalogue/price-unit', 'prices.0.per'],
    [{ prices: [price, { ...price, per: 'm' }] }, 'catalogue/priced-twice', 'prices.1.item'],
    [{ changes: [{ ...change, item: 'caster-x' }] }, 'catalogue/unknown-item', 'changes.0.item'],
    [{ changes: [{ ...change, field: 'capasity' }] }, 'catalogue/unknown-figure', 'changes.0.field'],
    [{ changes: [{ ...change, field: 'size' }] }, 'catalogue/unknown-figure', 'changes.0.field'],
    [{ changes: [{ ...change, field: 'size.9' }] }, 'catalogue/unknown-figure', 'changes.0.field'],
    [{ changes: [{ ...change, item: 'profile-30x30', field: 'size.0' }] }, 'catalogue/fixed-figure', 'changes.0.field'],
    [{ changes: [{ ...change, field: 'kind' }] }, 'catalogue/fixed-figure', 'changes.0.field'],
    [{ changes: [{ ...change, field: 'price' }] }, 'catalogue/fixed-figure', 'changes.0.field'],
    [{ changes: [{ ...change, value: '150' }] }, 'units/bare-number', 'changes.0.value'],
    [{ changes: [{ ...change, value: '-1 kg' }] }, 'brief/out-of-range', 'changes.0.value'],
    [{ changes: [change, change] }, 'catalogue/changed-twice', 'changes.1.field'],
  ])('refuses %o', (input, code, path) => {
    expect(refusals(input)).toEqual([[code, `site.${path}`]]);
  });

  test('names the figure that was meant', () => {
    const made = amendCatalogue(catalogue, { changes: [{ ...change, field: 'capasity' }] });
    expect(made.ok ? '' : made.problems[0]!.hint).toContain('capacity');
  });
});

describe('a brief with prices and changes', () => {
  const example = parse(read('examples/three-tables.yaml'));
  const briefText = (site: object) => stringify({ ...example, site: { ...example.site, ...site } });
  const design = (site: object) => designFrom({ briefText: briefText(site), catalogueFiles: files, ruleTexts });

  test('is composed from the amended catalogue', () => {
    const plain = valueOf(design({}));
    const priced = valueOf(design({ prices: [{ item: casterOf.id, price: '3.00 EUR', ...offer }] }));
    expect(plain.catalogue.amendments).toBeUndefined();
    expect(priced.catalogue.amendments!.prices).toHaveLength(1);
    expect(priced.revision).not.toBe(plain.revision);
  });

  test('tells what is wrong with a price where it stands', () => {
    const made = design({ prices: [{ item: 'nothing-such', price: '3.00 EUR', ...offer }] });
    expect(made.ok ? [] : told(made.problems)).toEqual([['catalogue/unknown-item', 'site.prices.0.item']]);
  });

  test.each([
    [{ item: 'a', price: '3,00 EUR', ...offer }, 'brief/money', 'price'],
    [{ item: 'a', price: '3.00 EUR', on: '2.11.2026', from: 'x' }, 'brief/malformed', 'on'],
    [{ item: 'a', price: '3.00 EUR', on: '2026-11-02' }, 'brief/missing', 'from'],
  ])('refuses %o', (price, code, field) => {
    const made = readBrief(briefText({ prices: [price] }));
    expect(made.ok ? [] : told(made.problems)).toEqual([[code, `site.prices.0.${field}`]]);
  });
});
