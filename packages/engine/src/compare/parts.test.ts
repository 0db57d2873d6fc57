import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Catalogue, Item } from '../catalogue/schema.js';
import type { Design, Part } from '../design/types.js';
import type { SiteRules } from '../rules/schema.js';
import { compareParts, type PartsState, tellingSizes } from './parts.js';

/** Invented: no real part, no real price. */
const foot = { id: 'foot-40', name: 'Foot', kind: 'levelling foot', mass: 0.3 };
const bar = {
  id: 'bar-40',
  name: 'Profile',
  kind: 'profile',
  size: [0.04, 0.04],
  stockLengths: [6],
  massPerLength: 1.5,
};
const priced = (item: object, amount: string | null, currency = 'EUR') =>
  ({
    ...item,
    slot: { width: 0.008 },
    alloy: '',
    ...(amount === null ? {} : { price: { amount, currency } }),
  }) as unknown as Item;
const catalogue = (items: readonly Item[], currency: string | null = 'EUR') =>
  ({
    items,
    byId: new Map(items.map((i) => [i.id, i])),
    currency,
    priceDate: '',
    priceBasis: '',
  }) as unknown as Catalogue;
const rule = (value: number) => ({ value });
const rules = {
  byId: { 'cutting.kerf': rule(0.004), 'cutting.trim': rule(0), 'parts.fastener-spare': rule(0) },
} as unknown as SiteRules;

let number = 0;
const feet = (count: number): Part =>
  ({
    id: `f${number++}`,
    item: 'foot-40',
    group: 'feet',
    role: 'foot',
    count,
    mass: 0.3 * count,
    placed: {},
  }) as unknown as Part;
const post = (length: number, count = 1): Part =>
  ({
    ...{ id: `p${number++}`, item: 'bar-40', group: 'profiles', role: 'post', mark: `P${length}` },
    ...{ length, count, mass: 1.5 * length * count, placed: {} },
  }) as unknown as Part;
const state = (parts: readonly Part[], book = catalogue([priced(foot, '8.00'), priced(bar, '10.00')])): PartsState => ({
  design: { parts } as unknown as Design,
  catalogue: book,
  rules,
});

describe('parts laid beside each other', () => {
  test('a line that came has its whole cost as difference, and one that went the same with the other sign', () => {
    const [a, b] = [state([]), state([feet(4)])];
    const came = compareParts(a, b);
    // 4 at 8.00.
    expect(came.items.map((i) => [i.itemId, i.change, i.difference])).toEqual([['foot-40', 'added', '32.00']]);
    expect([came.cost.before.amount, came.cost.after.amount, came.difference]).toEqual(['0.00', '32.00', '32.00']);
    const went = compareParts(b, a);
    expect(went.items.map((i) => [i.change, i.difference])).toEqual([['removed', '-32.00']]);
    expect(went.difference).toBe('-32.00');
  });

  test('a piece of another length is one taken and one brought, though their number stays', () => {
    const [item] = compareParts(state([post(2), post(2.5)]), state([post(2), post(2.4)])).items;
    expect(item!.pieces).toEqual({ before: 2, after: 2, added: 1, removed: 1 });
    expect(item!.sizes.map(({ length, count }) => [length, count.before, count.after])).toEqual([
      [2.5, 1, 0],
      [2.4, 0, 1],
    ]);
    // 1.5 kg/m times 0.1 m less.
    expect(item!.mass.after - item!.mass.before).toBeCloseTo(-0.15, 12);
    // One bar of 6 m on both sides.
    expect([item!.order, item!.difference]).toEqual([{ before: 6, after: 6 }, '0.00']);
  });

  test('one size whose number is that of the item says nothing more; two do', () => {
    const [came] = compareParts(state([]), state([post(2, 3)])).items;
    expect(tellingSizes(came!)).toEqual([]);
    const [other] = compareParts(state([post(2)]), state([post(2.4)])).items;
    expect(tellingSizes(other!).map((s) => s.length)).toEqual([2.4, 2]);
  });

  test('nothing is told of what is the same', () => {
    expect(compareParts(state([feet(4), post(2)]), state([post(2), feet(4)])).items).toEqual([]);
  });

  test('another price of the same parts is a difference', () => {
    const dearer = catalogue([priced(foot, '8.50'), priced(bar, '10.00')]);
    const { items, difference } = compareParts(state([feet(4)]), state([feet(4)], dearer));
    expect([items[0]!.change, items[0]!.difference, difference]).toEqual(['changed', '2.00', '2.00']);
  });
});

describe('what has no price', () => {
  const unpriced = catalogue([priced(foot, null), priced(bar, '10.00')]);

  test('is not priced, never zero', () => {
    const { items, cost, difference } = compareParts(state([], unpriced), state([feet(4)], unpriced));
    expect(items[0]!.cost.after).toEqual({ amount: null, currency: 'EUR', unpriced: 1 });
    expect([items[0]!.difference, cost.after.amount, difference]).toEqual([null, null, null]);
  });

  test('is counted beside the sum of the others', () => {
    const { cost } = compareParts(state([post(2)], unpriced), state([post(2), feet(4)], unpriced));
    // One bar of 6 m at 10.00 on both sides; the feet are missing from it and counted.
    expect(cost.after).toEqual({ amount: '60.00', currency: 'EUR', unpriced: 1 });
  });

  test('and two currencies give no difference', () => {
    const francs = catalogue([priced(foot, '8.00', 'CHF')], 'CHF');
    const { difference, items } = compareParts(state([feet(2)]), state([feet(4)], francs));
    expect([difference, items[0]!.difference]).toEqual([null, null]);
  });
});

test('pieces balance: before and added less removed are after', () => {
  const some = fc.array(
    fc.oneof(
      fc.integer({ min: 1, max: 9 }).map(feet),
      fc.tuple(fc.constantFrom(0.5, 1, 1.5, 2.25), fc.integer({ min: 1, max: 4 })).map(([l, n]) => post(l, n)),
    ),
    { maxLength: 6 },
  );
  fc.assert(
    fc.property(some, some, (a, b) => {
      const { pieces, items } = compareParts(state(a), state(b));
      for (const p of [pieces, ...items.map((i) => i.pieces)]) expect(p.before + p.added - p.removed).toBe(p.after);
      expect(pieces.before).toBe(a.reduce((sum, p) => sum + p.count, 0));
      expect(pieces.after).toBe(b.reduce((sum, p) => sum + p.count, 0));
    }),
    { numRuns: 60 },
  );
});
