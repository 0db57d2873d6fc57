import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Vec2 } from '../src/engine/contract.js';
import { bodyRadius, firstPlace, type Ground, groundOf, isFree, walked } from '../src/solid/walk.js';
import { exampleDesigns } from './example-designs.js';

const ring = (west: number, south: number, east: number, north: number): readonly Vec2[] => [
  [west, south],
  [east, south],
  [east, north],
  [west, north],
];
const stretches = (points: readonly Vec2[]) => points.map((a, i) => [a, points[(i + 1) % points.length]!] as const);
const hall = ring(0, 0, 6, 4);
const table = ring(2, 1, 4, 2);
const ground: Ground = { room: hall, solids: [table], stretches: [...stretches(hall), ...stretches(table)] };

test('a free walk goes as far as it is wished', () => {
  const [x, y] = walked(ground, [1, 3], [4, 0]);
  expect([x, y]).toEqual([expect.closeTo(5, 9), expect.closeTo(3, 9)]);
});

test('a walk straight into a wall ends a body from it', () => {
  const [x, y] = walked(ground, [1, 3], [0, 5]);
  expect(x).toBeCloseTo(1, 6);
  expect(y).toBeCloseTo(4 - bodyRadius, 6);
});

test('a walk along a wall slides', () => {
  const [x, y] = walked(ground, [1, 3.7], [3, 1]);
  expect(x).toBeGreaterThan(3.5);
  expect(y).toBeCloseTo(4 - bodyRadius, 6);
});

test('a table is not walked through, a thin panel neither', () => {
  expect(walked(ground, [1, 1.5], [4, 0])[0]).toBeCloseTo(2 - bodyRadius, 6);
  const panel: Ground = {
    room: hall,
    solids: [],
    stretches: [
      ...stretches(hall),
      [
        [3, 0],
        [3, 4],
      ],
    ],
  };
  expect(walked(panel, [1, 2], [4, 0])[0]).toBeCloseTo(3 - bodyRadius, 6);
});

test('wherever one walks, one stands free', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true })), {
        maxLength: 20,
      }),
      (wishes) => {
        let at: Vec2 = [1, 3];
        for (const wish of wishes) at = walked(ground, at, wish);
        expect(isFree(ground, at)).toBe(true);
      },
    ),
  );
});

describe.each(exampleDesigns())('%s', (_, design) => {
  test('has a free place to begin a walk, and it stays in the room', () => {
    const around = groundOf(design);
    const start = firstPlace(design, around)!;
    expect(isFree(around, start)).toBe(true);
    for (const wish of [
      [30, 0],
      [0, 30],
      [-30, 0],
      [0, -30],
    ] as const)
      expect(isFree(around, walked(around, start, wish))).toBe(true);
  });
});

test('a room too narrow to stand in has no place', () => {
  const slit: Ground = { room: ring(0, 0, 6, 0.3), solids: [], stretches: stretches(ring(0, 0, 6, 0.3)) };
  const design = { room: { outline: slit.room, doors: [] } } as unknown as Parameters<typeof firstPlace>[0];
  expect(firstPlace(design, slit)).toBeNull();
});
