import { describe, expect, test } from 'vitest';
import { cross, groundOf, lengthInside, outsideOf, strokesOf } from './ground.js';

const box = { left: 0, right: 4, top: 0, bottom: 3 };

// Plane geometry: the diagonal of 3 by 4 is 5.
test.each([
  ['through both corners', [-4, -3], [8, 6], 5],
  ['from the middle outward', [2, 1.5], [2, 10], 1.5],
  ['along an edge', [0, 0], [4, 0], 4],
  ['beside it', [5, 0], [5, 3], 0],
  ['past a corner', [-1, 2], [1, 4], 0],
] as const)('a line %s has its length inside', (_, a, b, length) => {
  expect(lengthInside([a, b], box)).toBeCloseTo(length, 12);
});

test('a box laid over a line leaves its two ends', () => {
  const left = outsideOf(
    {
      line: [
        [-2, 1],
        [6, 1],
      ],
      weight: 1,
    },
    box,
  );
  expect(left.map((s) => s.line)).toEqual([
    [
      [-2, 1],
      [0, 1],
    ],
    [
      [4, 1],
      [6, 1],
    ],
  ]);
});

test('lines cross when each has its ends on both sides of the other', () => {
  expect(
    cross(
      [
        [0, 0],
        [2, 2],
      ],
      [
        [0, 2],
        [2, 0],
      ],
    ),
  ).toBe(true);
  expect(
    cross(
      [
        [0, 0],
        [2, 2],
      ],
      [
        [3, 0],
        [3, 5],
      ],
    ),
  ).toBe(false);
  expect(
    cross(
      [
        [0, 0],
        [2, 2],
      ],
      [
        [2, 2],
        [4, 0],
      ],
    ),
  ).toBe(false);
});

describe('drawn paths', () => {
  const pen = { width: 0.5, colour: '#000000' };

  test('a closed ring has as many strokes as corners', () => {
    expect(strokesOf({ mark: 'path', d: 'M0 0 L4 0 L4 3 Z', pen })).toHaveLength(3);
  });

  test('fine and dashed lines weigh less than wide ones', () => {
    const weight = (width: number, dash?: readonly number[]) =>
      strokesOf({ mark: 'path', d: 'M0 0 L4 0', pen: { ...pen, width, ...(dash ? { dash } : {}) } })[0]!.weight;
    expect(weight(0.18)).toBeLessThan(weight(0.5));
    expect(weight(0.5, [6, 1])).toBeLessThan(weight(0.5));
  });

  test('only a filled upright rectangle hides what lies under it', () => {
    expect(groundOf({ mark: 'path', d: 'M0 0 L4 0 L4 3 L0 3 Z', fill: '#FFFFFF' })).toEqual(box);
    expect(groundOf({ mark: 'path', d: 'M0 0 L4 0 L4 3 L0 3 Z', pen })).toBeNull();
    expect(groundOf({ mark: 'path', d: 'M0 1 L4 0 L4 3 L0 3 Z', fill: '#FFFFFF' })).toBeNull();
  });
});
