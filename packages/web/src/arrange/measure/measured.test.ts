import type { Vec2 } from '@cloche/engine';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { measured } from './measured.js';

test('a right triangle of 3, 4 and 5 m has an area of 6 m² and is 12 m round', () => {
  const found = measured([
    [0, 0],
    [3, 0],
    [3, 4],
    [0, 0],
  ]);
  expect(found).toMatchObject({ length: 5, east: -3, north: -4, total: 12, area: 6 });
  // The way back points south-west: half a turn and the angle whose tangent is 4/3.
  expect(found!.angle).toBeCloseTo(Math.PI + Math.atan2(4, 3), 12);
});

test('an open line has no area, one point nothing', () => {
  expect(
    measured([
      [0, 0],
      [1, 1],
      [2, 0],
    ])!.area,
  ).toBeNull();
  expect(measured([[0, 0]])).toBeNull();
});

test('the total is never shorter than the way straight from the first point to the last', () => {
  const point = fc
    .tuple(fc.integer({ min: -99, max: 99 }), fc.integer({ min: -99, max: 99 }))
    .map(([x, y]): Vec2 => [x, y]);
  fc.assert(
    fc.property(fc.array(point, { minLength: 2, maxLength: 8 }), (points) => {
      const [a, b] = [points[0]!, points.at(-1)!];
      expect(measured(points)!.total).toBeGreaterThanOrEqual(Math.hypot(b[0] - a[0], b[1] - a[1]) - 1e-9);
    }),
  );
});
