import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { turn2, type Vec2, type Vec3 } from '../floor/geometry/vec.js';
import { carried, rigidMotion, wholeTurn } from './motion.js';

const metres = fc.integer({ min: -20_000, max: 20_000 }).map((mm) => mm / 1000);
const place: fc.Arbitrary<Vec3> = fc.tuple(metres, metres, metres);
const middle = (points: readonly Vec3[]) =>
  [0, 1, 2].map((k) => points.reduce((sum, p) => sum + p[k as 0 | 1 | 2], 0) / points.length) as unknown as Vec3;
const spread = (points: readonly Vec3[]) =>
  Math.max(...points.map((p) => Math.hypot(p[0] - middle(points)[0], p[1] - middle(points)[1])));

describe('a motion of points that keep their form', () => {
  test('a shift is found as it was made', () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 8 }), place, (points, by) => {
        const after = points.map(([x, y, z]): Vec3 => [x + by[0], y + by[1], z + by[2]]);
        const motion = rigidMotion(points, after)!;
        expect(motion.turn).toBeCloseTo(0, 6);
        for (const k of [0, 1, 2] as const) expect(motion.shift[k]).toBeCloseTo(by[k], 9);
      }),
    );
  });

  test('a turn about any point is found with the way of the middle', () => {
    fc.assert(
      fc.property(
        fc.array(place, { minLength: 2, maxLength: 8 }).filter((points) => spread(points) > 0.05),
        fc.tuple(metres, metres),
        fc.integer({ min: -179, max: 180 }),
        (points, about, degrees) => {
          const angle = (degrees * Math.PI) / 180;
          const turned = ([x, y, z]: Vec3): Vec3 => {
            const [dx, dy]: Vec2 = turn2([x - about[0], y - about[1]], angle);
            return [about[0] + dx, about[1] + dy, z];
          };
          const motion = rigidMotion(points, points.map(turned))!;
          expect(Math.cos(motion.turn - angle)).toBeCloseTo(1, 9);
          const [from, to] = [middle(points), turned(middle(points))];
          for (const k of [0, 1, 2] as const) expect(motion.shift[k]).toBeCloseTo(to[k] - from[k], 9);
        },
      ),
    );
  });

  test('is none when one point went another way', () => {
    const square: Vec3[] = [[0, 0, 0], [1, 0, 0], [1, 1, 0], [0, 1, 0]]; // biome-ignore format: one ring
    expect(rigidMotion(square, [...square.slice(0, 3), [0, 1.01, 0]])).toBeNull();
    expect(rigidMotion(square, square.slice(0, 3))).toBeNull();
    expect(rigidMotion([], [])).toBeNull();
  });
});

test('points lie after a motion where the hand puts them', () => {
  // A quarter turn counter-clockwise about (1, 1) takes (2, 1) to (1, 2); then 0.5 m east.
  const [point] = carried([[2, 1, 0.9]], [1, 1, 0], { shift: [0.5, 0, 0.1], turn: Math.PI / 2 });
  for (const [k, value] of [1.5, 2, 1].entries()) expect(point![k as 0 | 1 | 2]).toBeCloseTo(value, 12);
});

test('angles are told the short way round', () => {
  expect(wholeTurn((350 * Math.PI) / 180)).toBeCloseTo((-10 * Math.PI) / 180, 12);
  expect(wholeTurn((-190 * Math.PI) / 180)).toBeCloseTo((170 * Math.PI) / 180, 12);
});
