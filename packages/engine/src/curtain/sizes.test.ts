import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Outcome, valueOf } from '../floor/problem.js';
import { cornerGeometry } from './corner.js';
import { curtainDrop } from './drop.js';
import { overlapRay } from './overlap.js';
import { coveredLength, panelWidthBand } from './panel-width.js';
import { runMassPerLength } from './run-mass.js';
import { runnersOf } from './runners.js';
import { selectPanels } from './select-panels.js';
import { trackPieces } from './track-pieces.js';

const codes = (outcome: Outcome<unknown>) =>
  outcome.ok ? [] : outcome.problems.map((p) => `${p.code} ${p.path.join('.')}`);

/** All multisets of up to `most` pieces, as counts. */
function* multisets(kinds: number, most: number): Generator<number[]> {
  if (kinds === 0) {
    yield [];
    return;
  }
  for (let n = 0; n <= most; n++) for (const rest of multisets(kinds - 1, most - n)) yield [n, ...rest];
}

const stock = [
  { length: 0.5, price: 18 },
  { length: 1, price: 26 },
  { length: 2, price: 40 },
  { length: 3, price: 57 },
];

describe('track pieces', () => {
  // Enumeration: every multiset of stock whose length reaches the segment, with its one cut piece not under the least.
  test('cost no more than any other split, and together are the segment', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 90 }), (tenths) => {
        const length = tenths / 10;
        const prices: number[] = [];
        for (const counts of multisets(stock.length, 6)) {
          const sum = counts.reduce((s, n, i) => s + n * stock[i]!.length, 0);
          const offcut = sum - length;
          const cuttable = counts.some((n, i) => n > 0 && stock[i]!.length - offcut >= 0.3 - 1e-9);
          if (Math.abs(offcut) < 1e-9 || (offcut > 0 && cuttable))
            prices.push(counts.reduce((s, n, i) => s + n * stock[i]!.price, 0));
        }
        const found = trackPieces({ length, stock, shortestPiece: 0.3, aims: ['price', 'joints', 'cuts', 'off-cut'] });
        expect(valueOf(found).price).toBe(Math.min(...prices));
        expect(Math.abs(valueOf(found).pieces.reduce((s, p) => s + p, 0) - length)).toBeLessThan(1e-12);
        expect(valueOf(found).pieces.every((p) => p >= 0.3 - 1e-9)).toBe(true);
      }),
      { numRuns: 40, seed: 4 },
    );
  });

  test('are refused when no split exists or the question is not usable', () => {
    const ask = { length: 0.2, stock, shortestPiece: 0.3, aims: ['price'] as const };
    expect(codes(trackPieces(ask))).toEqual(['curtain/no-split length']);
    expect(codes(trackPieces({ ...ask, length: -1, stock: [], shortestPiece: -1 }))).toEqual([
      'curtain/length length',
      'curtain/no-stock stock',
      'curtain/negative shortestPiece',
    ]);
  });
});

describe('panels', () => {
  const widths = [
    { length: 0.9, price: 52 },
    { length: 1.4, price: 80 },
    { length: 2.2, price: 117 },
  ];
  test('are the cheapest of all choices inside the band, joint loss taken off', () => {
    const asks = fc.record({ tenths: fc.integer({ min: 8, max: 90 }), loss: fc.constantFrom(0, 0.04) });
    fc.assert(
      fc.property(asks, ({ tenths, loss }) => {
        const length = tenths / 10;
        const flat = (c: readonly number[]) =>
          c.reduce((s, n, i) => s + n * widths[i]!.length, 0) - loss * (c.reduce((s, n) => s + n, 0) - 1);
        const price = (c: readonly number[]) => c.reduce((s, n, i) => s + n * widths[i]!.price, 0);
        const all = [...multisets(3, 12)].filter((c) => c.some((n) => n > 0));
        const inside = all.filter((c) => flat(c) >= length * 1.07 - 1e-9 && flat(c) <= length * 1.1 + 1e-9);
        const below = Math.max(0, ...all.map(flat).filter((f) => f < length * 1.07 - 1e-9));
        const found = valueOf(
          selectPanels({
            length,
            extraLow: 0.07,
            extraHigh: 0.1,
            stock: widths,
            jointLoss: loss,
            aims: ['price', 'panels', 'width'],
          }),
        );
        expect(found.choice?.price ?? null).toBe(inside.length === 0 ? null : Math.min(...inside.map(price)));
        if (found.choice) expect(found.choice.flatWidth).toBeCloseTo(flat(found.choice.counts), 9);
        expect(found.below?.flatWidth ?? 0).toBeCloseTo(below, 9);
        if (found.above) expect(found.above.flatWidth).toBeGreaterThan(length * 1.1);
      }),
      { numRuns: 60, seed: 5 },
    );
  });

  test('are refused without widths, or with a band the wrong way round', () => {
    const ask = { length: 2, extraLow: 0.1, extraHigh: 0.07, stock: [], jointLoss: -1, aims: ['price'] as const };
    expect(codes(selectPanels(ask))).toEqual([
      'curtain/fullness-order extraHigh',
      'curtain/negative jointLoss',
      'curtain/no-stock stock',
    ]);
    expect(codes(panelWidthBand(0, { extraLow: -0.1, extraHigh: 0 }))).toEqual([
      'curtain/length length',
      'curtain/negative extraLow',
    ]);
  });

  test('cover half a lap at each end that laps', () => {
    expect(coveredLength(2, 1, 0.3)).toBeCloseTo(2.15, 12);
    expect(coveredLength(2, 2, 0.3)).toBeCloseTo(2.3, 12);
  });
});

describe('corner', () => {
  // Closed form for a right angle: path = a + b - (2 - pi/2) R.
  test('path of a quarter bend', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1, noNaN: true }), (radius) => {
        const found = valueOf(cornerGeometry({ legA: 2, legB: 3, radius, angle: Math.PI / 2 }));
        expect(found.path).toBeCloseTo(5 - (2 - Math.PI / 2) * radius, 9);
        expect(found.straightA + found.straightB + found.bend).toBeCloseTo(found.path, 9);
      }),
      { seed: 6 },
    );
  });

  test('refuses a leg shorter than its tangent, a turn outside 0 to 180 degrees, bad lengths', () => {
    const ask = { legA: 0.2, legB: 1, radius: 0.3, angle: Math.PI / 2 };
    expect(codes(cornerGeometry(ask))).toEqual(['curtain/no-room-for-bend legA']);
    expect(codes(cornerGeometry({ ...ask, angle: Math.PI }))).toEqual(['curtain/bend-angle angle']);
    expect(codes(cornerGeometry({ ...ask, legA: 0, radius: -1 }))).toEqual([
      'curtain/leg legA',
      'curtain/negative radius',
    ]);
  });
});

test('runners sit no farther apart than the pitch, and one fewer would', () => {
  const ask = { pitch: 0.15, runnerLength: 0.03, thickness: 0.002, endStop: 0.02 };
  fc.assert(
    fc.property(fc.integer({ min: 100, max: 5000 }), (millimetres) => {
      const width = millimetres / 1000;
      const { runners, pitch } = valueOf(runnersOf({ ...ask, width }));
      expect(pitch).toBeLessThanOrEqual(0.15 + 1e-6);
      if (runners > 2) expect(width / (runners - 2)).toBeGreaterThan(0.15);
    }),
    { seed: 7 },
  );
  // Thick cloth decides over the runners: 2 t gaps.
  expect(valueOf(runnersOf({ ...ask, width: 1.5, thickness: 0.05 })).stackBack).toBeCloseTo(2 * 0.05 * 10 + 0.02, 12);
  expect(codes(runnersOf({ ...ask, width: 0, pitch: 0, endStop: -1 }))).toEqual([
    'curtain/width width',
    'curtain/pitch pitch',
    'curtain/negative endStop',
  ]);
});

test('drop, gap at the low point, and what leaves no curtain', () => {
  const found = valueOf(curtainDrop({ underside: 2.5, runnerDrop: 0.05, hemGap: 0.02, floorFall: 0.01 }));
  expect(found.drop + 0.05 + 0.02).toBeCloseTo(2.5, 12);
  expect(found.lowGap).toBeCloseTo(0.03, 12);
  expect(codes(curtainDrop({ underside: 0.05, runnerDrop: 0.05, hemGap: 0, floorFall: 0 }))).toEqual([
    'curtain/no-drop underside',
  ]);
  expect(codes(curtainDrop({ underside: 0, runnerDrop: 0, hemGap: -1, floorFall: 0 }))).toEqual([
    'curtain/underside underside',
    'curtain/negative hemGap',
  ]);
});

// Handbook of layout, 3.8: 0.3 m at 0.1 m spacing: 71.6 degrees.
test('overlap of 0.3 m at 0.1 m', () => {
  const { fromNormal, fromPlane } = valueOf(overlapRay(0.3, 0.1));
  expect((fromNormal * 180) / Math.PI).toBeCloseTo(71.565, 3);
  expect(fromNormal + fromPlane).toBeCloseTo(Math.PI / 2, 12);
  expect(codes(overlapRay(-1, 0))).toEqual(['curtain/layer-spacing spacing', 'curtain/negative overlap']);
});

test('mass per length is the sum of its parts', () => {
  const ask = { track: 0.7, runner: 0.015, pitch: 0.15, fullness: 1.1, cloth: 0.5, hem: 0.2, drop: 2 };
  expect(valueOf(runMassPerLength(ask)).total).toBeCloseTo(0.7 + 1.1 * (0.5 * 2 + 0.2 + 0.1), 12);
  expect(codes(runMassPerLength({ ...ask, pitch: 0, drop: 0, fullness: 0, hem: -1 }))).toEqual([
    'curtain/pitch pitch',
    'curtain/drop drop',
    'curtain/fullness fullness',
    'curtain/negative hem',
  ]);
});
