import type { Ring } from '@cloche/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { moveFor, toWall } from './clearances.js';

const room: Ring = [
  [0, 0],
  [6, 0],
  [6, 4],
  [0, 4],
];

describe('the distance to the wall', () => {
  test.each([
    [[-1, 0], 2],
    [[1, 0], 4],
    [[0, -1], 1],
    [[0, 1], 3],
  ] as const)('towards %s', (direction, distance) => {
    expect(toWall(room, [2, 1], direction)).toBeCloseTo(distance, 9);
  });
  test('ends at the nearer wall of a room with an inner corner', () => {
    const l: Ring = [
      [0, 0],
      [6, 0],
      [6, 4],
      [4, 4],
      [4, 2],
      [0, 2],
    ];
    expect(toWall(l, [2, 1], [0, 1])).toBeCloseTo(1, 9);
    expect(toWall(l, [5, 1], [0, 1])).toBeCloseTo(3, 9);
  });
  test('is none where no wall is', () => {
    expect(toWall(room, [9, 9], [1, 0])).toBeNull();
  });
});

test('after the move for a wanted distance the distance is the wanted one', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.1, max: 1.9, noNaN: true }), (wanted) => {
      const from = [2, 1] as const;
      const [dx, dy] = moveFor({ side: 'west', from, to: [0, 1], distance: 2 }, wanted);
      expect(toWall(room, [from[0] + dx, from[1] + dy], [-1, 0])).toBeCloseTo(wanted, 9);
    }),
    { seed: 3 },
  );
});
