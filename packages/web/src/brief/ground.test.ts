import { bounds, contains, type Ring, type Vec2 } from '@cloche/engine';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { firstFit, freePlace, freeStretch, type Ground, groundOf } from './ground.js';

const box = (x: number, y: number, l: number, w: number): Ring => [
  [x, y],
  [x + l, y],
  [x + l, y + w],
  [x, y + w],
];
const room = (length: number, width: number, ...taken: Ring[]): Ground => ({
  outline: box(0, 0, length, width),
  height: 3,
  taken,
  inWalls: [],
});

test('an empty room gives its middle', () => {
  expect(freePlace(room(6, 4), [2.4, 1.2])).toEqual([3, 2]);
});

test('what does not fit has no place, and a smaller one is tried', () => {
  expect(freePlace(room(2, 1), [2.4, 1.2])).toBeNull();
  expect(
    firstFit(room(2, 1), [
      [2.4, 1.2],
      [1.2, 0.6],
    ] as Vec2[]).size,
  ).toEqual([1.2, 0.6]);
  expect(firstFit(room(0.4, 0.4), [[1, 1]])).toEqual({ at: [0.2, 0.2], size: [1, 1] });
});

test('the inner corner of a room in the form of an L is no free place', () => {
  const outline: Ring = [
    [0, 0],
    [6, 0],
    [6, 2],
    [2, 2],
    [2, 6],
    [0, 6],
  ];
  const at = freePlace({ outline, height: 3, taken: [], inWalls: [] }, [2.4, 1.2])!;
  expect(box(at[0] - 1.2, at[1] - 0.6, 2.4, 1.2).every((corner) => contains(outline, corner, 1e-9))).toBe(true);
});

test('a place never overlaps the walls or what stands there', () => {
  const size = fc.double({ min: 2, max: 12, noNaN: true });
  fc.assert(
    fc.property(size, size, fc.double({ min: 0, max: 1, noNaN: true }), (length, width, where) => {
      const solid = box(where * (length - 1), 0, 1, 1);
      const at = freePlace(room(length, width, solid), [1.2, 0.6]);
      if (!at) return true;
      const own = bounds(box(at[0] - 0.6, at[1] - 0.3, 1.2, 0.6));
      const other = bounds(solid);
      const inRoom =
        own.min[0] >= -1e-9 && own.max[0] <= length + 1e-9 && own.min[1] >= -1e-9 && own.max[1] <= width + 1e-9;
      const free = [0, 1].some((k) => own.min[k]! >= other.max[k]! - 1e-9 || own.max[k]! <= other.min[k]! + 1e-9);
      return inRoom && free;
    }),
    { numRuns: 60, seed: 7 },
  );
});

test('a door goes beside the one that is there, or to the next wall', () => {
  const ground = groundOf(undefined);
  expect(freeStretch(ground, 1)).toEqual({ wall: 0, at: 0.5 });
  const withDoor = { ...ground, inWalls: [{ wall: 0, from: 0.5, to: 1.5 }] };
  expect(freeStretch(withDoor, 1)).toEqual({ wall: 0, at: 1.75 });
  const full = { ...ground, inWalls: [{ wall: 0, from: 0, to: 6 }] };
  expect(freeStretch(full, 1).wall).toBe(1);
  expect(freeStretch(ground, 1, [2]).wall).toBe(2);
});
