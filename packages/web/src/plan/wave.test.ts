import { expect, test } from 'vitest';
import { wave } from './wave.js';

const lengthOf = (points: readonly (readonly [number, number])[]) =>
  points.slice(1).reduce((sum, p, i) => sum + Math.hypot(p[0] - points[i]![0], p[1] - points[i]![1]), 0);

// What the drawing promises: the drawn line is as much longer than the track as the curtain is.
test.each([1.05, 1.1, 1.2])('the wave of fullness %d is that much longer than its track', (fullness) => {
  const drawn =
    lengthOf(
      wave(
        [
          [0, 0],
          [3.2, 0],
        ],
        fullness,
      ),
    ) / 3.2;
  expect(Math.abs(drawn - fullness)).toBeLessThan(0.15 * (fullness - 1) + 0.005);
});

test('the wave starts and ends on the track', () => {
  const drawn = wave(
    [
      [0, 0],
      [1, 0],
      [1, 2],
    ],
    1.1,
  );
  expect(drawn[0]).toEqual([0, 0]);
  expect(drawn.at(-1)).toEqual([1, 2]);
});

test('a line of no length gives no wave', () => {
  expect(wave([], 1.1)).toEqual([]);
});
