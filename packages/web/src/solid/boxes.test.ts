import { expect, test } from 'vitest';
import { boxesOf, boxOver, cornersOf } from './boxes.js';

const extent = (points: readonly (readonly number[])[], k: number) =>
  Math.max(...points.map((p) => p[k]!)) - Math.min(...points.map((p) => p[k]!));

test('an upright bar is as long as it is high and turned as its section', () => {
  const [box] = boxesOf({ shape: 'bar', from: [0, 0, 0], to: [0, 0, 2], width: 0.04, height: 0.08, across: [0, 1] });
  const corners = cornersOf(box!);
  expect([0, 1, 2].map((k) => Number(extent(corners, k).toFixed(9)))).toEqual([0.08, 0.04, 2]);
});

test('a lying bar has its width across and its height upright', () => {
  const [box] = boxesOf({ shape: 'bar', from: [0, 0, 2], to: [3, 0, 2], width: 0.04, height: 0.08 });
  const corners = cornersOf(box!);
  expect([0, 1, 2].map((k) => Number(extent(corners, k).toFixed(9)))).toEqual([3, 0.04, 0.08]);
});

// Sum of chords tends to the arc length r * sweep from below.
test('a bend is drawn by chords of nearly its length', () => {
  const boxes = boxesOf({
    shape: 'bend',
    centre: [0, 0, 2],
    radius: 0.5,
    start: 0,
    sweep: Math.PI / 2,
    width: 0.03,
    height: 0.05,
  });
  const length = boxes.reduce((sum, b) => sum + b.sizes[0], 0);
  expect(length).toBeLessThan((0.5 * Math.PI) / 2);
  expect(length).toBeGreaterThan(0.999 * 0.5 * (Math.PI / 2));
});

test('a box over a turned rectangle covers it', () => {
  const box = boxOver(
    [
      [1, 0],
      [1, 2],
      [0, 2],
      [0, 0],
    ],
    0,
    0.9,
  );
  const corners = cornersOf(box);
  expect([0, 1, 2].map((k) => Number(extent(corners, k).toFixed(9)))).toEqual([1, 2, 0.9]);
});
