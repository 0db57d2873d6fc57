import { expect, test } from 'vitest';
import { counterClockwise, offsetRing } from './wall-band.js';

test('a square moved outward by 0.1 is a square that is 0.2 wider', () => {
  const out = offsetRing(
    [
      [0, 0],
      [2, 0],
      [2, 2],
      [0, 2],
    ],
    0.1,
  );
  const expected = [
    [-0.1, -0.1],
    [2.1, -0.1],
    [2.1, 2.1],
    [-0.1, 2.1],
  ];
  out.forEach((p, i) => {
    expect(p[0]).toBeCloseTo(expected[i]![0]!, 12);
    expect(p[1]).toBeCloseTo(expected[i]![1]!, 12);
  });
});

test('an inner corner moves into the notch', () => {
  const ring = [
    [0, 0],
    [4, 0],
    [4, 2],
    [2, 2],
    [2, 4],
    [0, 4],
  ] as const;
  expect(offsetRing(ring, 0.1)[3]!.map((v) => Number(v.toFixed(9)))).toEqual([2.1, 2.1]);
});

test('a ring that runs clockwise is turned round', () => {
  expect(
    counterClockwise([
      [0, 0],
      [0, 1],
      [1, 1],
    ]),
  ).toEqual([
    [1, 1],
    [0, 1],
    [0, 0],
  ]);
});
