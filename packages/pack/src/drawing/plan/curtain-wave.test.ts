import type { Vec2 } from '@cloche/engine';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { curtainWave, pathLength, stretchOf } from './curtain-wave.js';

const corner: Vec2[] = [
  [0, 0],
  [60, 0],
  [60, 40],
];

test('the drawn wave is as long as the cloth is wide', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1.01, max: 2.2, noNaN: true }),
      fc.double({ min: 20, max: 200, noNaN: true }),
      (fullness, length) => {
        const wave = curtainWave(
          [
            [0, 0],
            [length, 0],
          ],
          fullness,
          3.2,
        );
        expect(pathLength(wave) / length).toBeCloseTo(fullness, 4);
      },
    ),
    { seed: 5, numRuns: 40 },
  );
});

test('the wave begins and ends with the track', () => {
  const wave = curtainWave(corner, 1.3, 3.2);
  expect(wave[0]![0]).toBeCloseTo(0, 9);
  expect(wave[0]![1]).toBeCloseTo(0, 9);
  expect(wave.at(-1)![0]).toBeCloseTo(60, 9);
  expect(wave.at(-1)![1]).toBeCloseTo(40, 9);
});

test('a curtain without fullness is a straight line', () => {
  expect(curtainWave(corner, 1, 3.2)).toEqual(corner);
});

test('a stretch of a line keeps its corner and its length', () => {
  const part = stretchOf(corner, 50, 75);
  expect(part).toEqual([
    [50, 0],
    [60, 0],
    [60, 15],
  ]);
});
