import type { Vec2 } from '@cloche/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compassRule, cornersOf, diagonalErrors, spreadCorners, suspects, traverse } from './traverse.js';

const left = Math.PI / 2;

// Wolf and Ghilani, Elementary Surveying, the traverse ABCDE worked through chapter 10: departures and latitudes before
// balancing, lengths 647.25, 203.03, 720.35, 610.24, 285.13 ft; corrections and balanced values as printed (from memory).
const printed = [
  { leg: [517.451, -388.815], length: 647.25, correction: [-0.007, -0.02] },
  { leg: [5.966, -202.942], length: 203.03, correction: [-0.002, -0.006] },
  { leg: [192.889, 694.045], length: 720.35, correction: [-0.008, -0.023] },
  { leg: [-590.565, 153.708], length: 610.24, correction: [-0.006, -0.019] },
  { leg: [-125.715, -255.919], length: 285.13, correction: [-0.003, -0.009] },
] as const;

describe('the published traverse', () => {
  const legs = printed.map(({ leg }): Vec2 => leg);

  test('leaves the published closing error', () => {
    const { error } = cornersOf(legs);
    expect(error[0]).toBeCloseTo(0.026, 6);
    expect(error[1]).toBeCloseTo(0.077, 6);
    // Printed: linear misclosure 0.08 ft in 2466.00 ft, 1 in 30 000.
    const perimeter = printed.reduce((sum, { length }) => sum + length, 0);
    expect(perimeter).toBeCloseTo(2466, 6);
    expect(Number((perimeter / Math.hypot(...error)).toPrecision(1))).toBe(30_000);
  });

  test('is corrected leg by leg as published, to the last printed figure', () => {
    const corrections = compassRule(legs);
    for (const [i, { correction }] of printed.entries())
      for (const k of [0, 1] as const) expect(Math.abs(corrections[i]![k] - correction[k])).toBeLessThan(0.00051);
  });
});

test('a room of 4 m by 3 m closes, its diagonals are 5 m', () => {
  const drawn = traverse([4, 3, 4, 3].map((length) => ({ length, turn: left })));
  expect(Math.hypot(...drawn.error)).toBeLessThan(1e-12);
  expect(drawn.turnError).toBeCloseTo(0, 12);
  expect(drawn.corners).toEqual([
    [0, 0],
    [4, 0],
    [4, 3],
    [0, 3],
  ]);
  // Measured 5.012 m where 5 m is drawn: 12 mm too long.
  const [error] = diagonalErrors(drawn.corners, [{ from: 0, to: 2, measured: 5.012 }]);
  expect(error).toBeCloseTo(0.012, 12);
});

test('the error lies where the hand-worked sum puts it, and the walls that run that way are named', () => {
  // East 6.000, north 4.000, west 5.980, south 4.000: 20 mm east of the first corner.
  const drawn = traverse([6, 4, 5.98, 4].map((length) => ({ length, turn: left })));
  expect(drawn.error[0]).toBeCloseTo(0.02, 12);
  expect(drawn.error[1]).toBeCloseTo(0, 12);
  expect(drawn.perimeter).toBeCloseTo(19.98, 12);
  expect(suspects(drawn)).toEqual([0, 2]);
});

test('a room in the form of an L turns right once', () => {
  const walls = [
    { length: 6, turn: left },
    { length: 2, turn: left },
    { length: 4, turn: -left },
    { length: 3, turn: left },
    { length: 2, turn: left },
    { length: 5, turn: left },
  ];
  const drawn = traverse(walls);
  expect(Math.hypot(...drawn.error)).toBeLessThan(1e-12);
  expect(drawn.turnError).toBeCloseTo(0, 12);
});

test('a turn that is not as written is told apart from lengths', () => {
  const drawn = traverse([4, 3, 4, 3].map((length, i) => ({ length, turn: i === 1 ? left - 0.1 : left })));
  expect(drawn.turnError).toBeCloseTo(-0.1, 12);
});

const leg = fc.tuple(fc.double({ min: -20, max: 20, noNaN: true }), fc.double({ min: -20, max: 20, noNaN: true }));

test('corrections add up to the error with its sign turned, and corrected legs close', () => {
  fc.assert(
    fc.property(fc.array(leg, { minLength: 3, maxLength: 12 }), (legs) => {
      const { error } = cornersOf(legs);
      const corrections = compassRule(legs);
      const perimeter = legs.reduce((sum, each) => sum + Math.hypot(...each), 0);
      fc.pre(perimeter > 1e-3);
      for (const k of [0, 1] as const) expect(corrections.reduce((sum, c) => sum + c[k], 0)).toBeCloseTo(-error[k], 9);
      const closed = cornersOf(
        legs.map((each, i): Vec2 => [each[0] + corrections[i]![0], each[1] + corrections[i]![1]]),
      );
      expect(Math.hypot(...closed.error)).toBeLessThan(1e-9);
    }),
  );
});

test('a list that closes stays as it is when its error is spread', () => {
  const drawn = traverse([4, 3, 4, 3].map((length) => ({ length, turn: left })));
  for (const [i, corner] of spreadCorners(drawn).entries())
    for (const k of [0, 1] as const) expect(corner[k]).toBeCloseTo(drawn.corners[i]![k], 9);
});
