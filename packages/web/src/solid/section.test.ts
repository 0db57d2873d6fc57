import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Vec2, Vec3 } from '../engine/contract.js';
import { cornersOf, uprightBox } from './boxes.js';
import { hatchLines, narrowest } from './hatch.js';
import { type Axis, inPlane, isKept, keptFace, keptStretch, sectionOf } from './section.js';

/** Shoelace formula, without its sign. */
const area = (face: readonly Vec2[]): number =>
  Math.abs(
    face.reduce((sum, a, i) => {
      const b = face[(i + 1) % face.length]!;
      return sum + a[0] * b[1] - a[1] * b[0];
    }, 0),
  ) / 2;

test.each([
  [0, 0.3, 4 * 3],
  [1, -0.2, 2 * 3],
  [2, 1.1, 2 * 4],
] as const)('a level box cut across axis %d shows the product of its other sizes', (axis, at, expected) => {
  const face = sectionOf(cornersOf(uprightBox([0, 0, 1], 2, 4, 3, 0)), axis, at);
  expect(area(face.map((p) => inPlane(axis, p)))).toBeCloseTo(expected, 9);
  expect(face.every((p) => p[axis] === at)).toBe(true);
});

test('a cut that passes by shows nothing', () => {
  expect(sectionOf(cornersOf(uprightBox([0, 0, 1], 2, 4, 3, 0)), 0, 1.5)).toEqual([]);
});

// A square of side s turned by 45 degrees is s √2 wide through its middle.
test('a turned box is cut along its diagonal', () => {
  const face = sectionOf(cornersOf(uprightBox([0, 0, 0], 1, 1, 2, Math.PI / 4)), 1, 0);
  expect(area(face.map((p) => inPlane(1, p)))).toBeCloseTo(2 * Math.SQRT2, 5);
});

// Volume of a box is the integral of its cut areas; the midpoint rule is exact enough with many slices.
test('the cut faces of a turned box add up to its volume, whichever way it is cut', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: Math.PI, noNaN: true }), fc.constantFrom<Axis>(0, 1, 2), (turn, axis) => {
      const corners = cornersOf(uprightBox([0, 0, 0], 1.2, 0.7, 0.9, turn));
      const [low, high] = [Math.min(...corners.map((c) => c[axis])), Math.max(...corners.map((c) => c[axis]))];
      const slices = 400;
      const step = (high - low) / slices;
      const sum = Array.from({ length: slices }, (_, i) =>
        area(sectionOf(corners, axis, low + (i + 0.5) * step).map((p) => inPlane(axis, p))),
      ).reduce((a, b) => a + b, 0);
      expect(Math.abs(sum * step - 1.2 * 0.7 * 0.9)).toBeLessThan(1e-3);
    }),
    { numRuns: 30 },
  );
});

test('a second cut halves a face through its middle', () => {
  const face = sectionOf(cornersOf(uprightBox([0, 0, 0], 2, 2, 2, 0)), 2, 0);
  const half = keptFace(face, { axis: 0, at: 0, keeps: 'lesser' });
  expect(area(half.map((p) => inPlane(2, p)))).toBeCloseTo(2, 9);
  expect(half.every((p) => p[0] <= 1e-9)).toBe(true);
});

test('a stretch is shortened to what is kept', () => {
  const cut = { axis: 0, at: 1, keeps: 'greater' } as const;
  expect(keptStretch([0, 0, 0], [4, 0, 2], cut)).toEqual([
    [1, 0, 0.5],
    [4, 0, 2],
  ]);
  expect(keptStretch([0, 0, 0], [0.5, 0, 2], cut)).toBeNull();
  expect(isKept(cut, [1, 9, 9] as Vec3)).toBe(true);
});

// Lines at 45 degrees and distance d over a square of side a have a total length of a² / d on the average.
test('hatching covers a face evenly', () => {
  const square: readonly Vec2[] = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ];
  for (const rising of [true, false]) {
    const lines = hatchLines(square, 0.01, rising);
    const length = lines.reduce((sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0);
    expect(length).toBeGreaterThan(99);
    expect(length).toBeLessThan(101);
    expect(lines.every(([a, b]) => Math.abs(Math.abs(b[1] - a[1]) - Math.abs(b[0] - a[0])) < 1e-9)).toBe(true);
  }
});

test('a face is as narrow as the lesser side of a rectangle, and as the height of a triangle', () => {
  const rectangle: readonly Vec2[] = [
    [0, 0],
    [3, 0],
    [3, 0.2],
    [0, 0.2],
  ];
  expect(narrowest(rectangle)).toBeCloseTo(0.2, 9);
  expect(
    narrowest([
      [0, 0],
      [1, 0],
      [0.5, Math.sqrt(3) / 2],
    ]),
  ).toBeCloseTo(Math.sqrt(3) / 2, 9);
});
