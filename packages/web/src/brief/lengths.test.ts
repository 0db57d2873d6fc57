import { expect, test } from 'vitest';
import { lengthLike, metresOf, snapped } from './lengths.js';

test.each([
  ['2.4 m', 1.23, '1.23 m'],
  ['2400 mm', 1.23, '1230 mm'],
  ['100 in', 0.254, '10 in'],
  ['4 ft 6 in', 0.254, '10 in'],
  ['8 ft', 0.6096, '2 ft'],
  [undefined, 0.5, '0.5 m'],
])('a place written as %s is written back in its unit', (before, metres, text) => {
  expect(lengthLike(before, metres)).toBe(text);
});

test('a place is moved to the raster of its unit', () => {
  expect(snapped('2 m', 1.2349)).toBeCloseTo(1.23, 12);
  expect(snapped('40 in', 0.26)).toBeCloseTo(0.254, 12);
});

test('what is no length is no number', () => {
  expect(metresOf('2 kg')).toBeNull();
  expect(metresOf(undefined)).toBeNull();
});
