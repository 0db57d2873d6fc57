import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { valueOf } from '../floor/problem.js';
import { cheapestSupports } from './cheapest-supports.js';
import { evenSupports } from './even-supports.js';
import { fewestSupports, supportsKeep } from './fewest-supports.js';
import { supportWindows } from './support-windows.js';
import type { SupportDemand } from './types.js';

/** Demand in whole decimetres, so that every place on the grid can be enumerated. */
const demands = fc
  .record({
    length: fc.integer({ min: 2, max: 16 }),
    spacing: fc.integer({ min: 2, max: 6 }),
    endDistance: fc.integer({ min: 0, max: 3 }),
    joint: fc.integer({ min: 1, max: 15 }),
    jointDistance: fc.integer({ min: 0, max: 2 }),
    from: fc.integer({ min: 0, max: 14 }),
    width: fc.integer({ min: 1, max: 6 }),
  })
  .map((d): SupportDemand => {
    const length = d.length / 10;
    const windows = valueOf(
      supportWindows({
        length,
        endDistance: d.endDistance / 10,
        joints: d.joint < d.length ? [d.joint / 10] : [],
        jointDistance: d.jointDistance / 10,
        required: [],
      }),
    );
    return {
      length,
      spacing: d.spacing / 10,
      windows,
      forbidden: [{ from: d.from / 10, to: (d.from + d.width) / 10 }],
    };
  });

/** Every set of grid places that keeps the demand, by enumeration. */
function* layouts(demand: SupportDemand): Generator<number[]> {
  const places = Array.from({ length: Math.round(demand.length * 10) + 1 }, (_, i) => i / 10);
  for (let set = 0; set < 2 ** places.length; set++) {
    const chosen = places.filter((_, i) => (set >> i) & 1);
    if (supportsKeep(chosen, demand)) yield chosen;
  }
}

const fewestByEnumeration = (demand: SupportDemand): number | null => {
  let least: number | null = null;
  for (const layout of layouts(demand)) if (least === null || layout.length < least) least = layout.length;
  return least;
};

// Grid data have a grid optimum (exchange argument), so enumeration of the grid is the proof.
test('no layout has fewer supports than the greedy one, and where it finds none there is none', () => {
  fc.assert(
    fc.property(demands, (demand) => {
      const found = fewestSupports(demand);
      const least = fewestByEnumeration(demand);
      expect(found.ok ? found.value.length : null).toBe(least);
      if (found.ok) expect(supportsKeep(found.value, demand)).toBe(true);
    }),
    { numRuns: 15, seed: 1 },
  );
});

test('evening out keeps the count and the demand, and never widens the largest distance', () => {
  const widest = (places: readonly number[]) => Math.max(0, ...places.slice(1).map((p, i) => p - places[i]!));
  fc.assert(
    fc.property(demands, (demand) => {
      const fewest = fewestSupports(demand);
      const even = evenSupports(demand);
      expect(even.ok).toBe(fewest.ok);
      if (!even.ok || !fewest.ok) return;
      expect(even.value).toHaveLength(fewest.value.length);
      expect(supportsKeep(even.value, demand)).toBe(true);
      expect(widest(even.value)).toBeLessThanOrEqual(widest(fewest.value) + 1.1e-3);
    }),
    { numRuns: 100, seed: 2 },
  );
});

// Closed form: without joints the least largest distance is (L - 2 e)/(n - 1).
test('a free track of 5 m with 0.2 m ends has six supports 0.92 m apart', () => {
  const windows = valueOf(supportWindows({ length: 5, endDistance: 0.2, joints: [], jointDistance: 0, required: [] }));
  const places = valueOf(evenSupports({ length: 5, spacing: 1, windows, forbidden: [] }));
  expect(places).toHaveLength(6);
  for (const [i, p] of places.entries()) expect(Math.abs(p - (0.2 + 0.92 * i))).toBeLessThan(1.5e-3);
});

test('the cheapest choice of candidates is the cheapest of all choices', () => {
  const priced = fc.record({
    places: fc.uniqueArray(fc.integer({ min: 0, max: 20 }), { minLength: 1, maxLength: 9 }),
    prices: fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 9, maxLength: 9 }),
    joint: fc.integer({ min: 4, max: 16 }),
  });
  fc.assert(
    fc.property(priced, ({ places, prices, joint }) => {
      const windows = valueOf(
        supportWindows({ length: 2, endDistance: 0.4, joints: [joint / 10], jointDistance: 0.3, required: [] }),
      );
      const demand: SupportDemand = { length: 2, spacing: 0.9, windows, forbidden: [] };
      const candidates = places.map((p, i) => ({ at: p / 10, price: prices[i]! }));
      const all = Array.from({ length: 2 ** candidates.length }, (_, set) =>
        candidates.filter((_, i) => (set >> i) & 1),
      );
      const costs = all
        .filter((set) =>
          supportsKeep(
            set.map((c) => c.at),
            demand,
          ),
        )
        .map((set) => set.reduce((sum, c) => sum + c.price, 0));
      const found = cheapestSupports(candidates, demand);
      if (costs.length === 0) {
        expect(found.ok ? [] : found.problems.map((p) => p.code)).toEqual(['curtain/no-support-place']);
        return;
      }
      const least = Math.min(...costs);
      expect(valueOf(found).price).toBe(least);
      expect(valueOf(found).choices).toBe(costs.filter((c) => c === least).length);
      expect(supportsKeep(valueOf(found).places, demand)).toBe(true);
    }),
    { numRuns: 60, seed: 3 },
  );
});

describe('supports are refused', () => {
  const plain: SupportDemand = {
    length: 4,
    spacing: 1,
    windows: [
      { from: 0, to: 0.2 },
      { from: 3.8, to: 4 },
    ],
    forbidden: [],
  };
  test.each([
    ['curtain/length', { ...plain, length: 0 }],
    ['curtain/spacing', { ...plain, spacing: Number.NaN }],
    ['curtain/interval', { ...plain, forbidden: [{ from: 2, to: 1 }] }],
    ['curtain/interval', { ...plain, windows: [{ from: 2, to: 1 }] }],
    ['curtain/no-support-place', { ...plain, forbidden: [{ from: 1.5, to: 2.7 }], spacing: 0.5 }],
  ])('with %s', (code, demand) => {
    const found = fewestSupports(demand);
    expect(found.ok ? [] : found.problems.map((p) => p.code)).toContain(code);
    const even = evenSupports(demand);
    expect(even.ok ? [] : even.problems.map((p) => p.code)).toContain(code);
  });

  test('when a joint lies outside the track or a distance is below zero', () => {
    const found = supportWindows({ length: 2, endDistance: -1, joints: [3], jointDistance: -0.1, required: [-1] });
    expect(found.ok ? [] : found.problems.map((p) => `${p.code} ${p.path.join('.')}`)).toEqual([
      'curtain/outside-track joints',
      'curtain/outside-track required',
      'curtain/negative endDistance',
      'curtain/negative jointDistance',
    ]);
  });

  test('without candidates', () => {
    const found = cheapestSupports([], plain);
    expect(found.ok ? [] : found.problems.map((p) => p.code)).toEqual(['curtain/no-stock']);
  });
});
