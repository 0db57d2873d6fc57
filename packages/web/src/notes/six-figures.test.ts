import { expect, test } from 'vitest';
import { sixFigures } from './six-figures.js';

test.each([
  [1234.5678, '1234.57'],
  [0.9, '0.9'],
  [1.23456789e-7, '1.23457e-7'],
  [-2.5, '\u22122.5'],
  [Number.POSITIVE_INFINITY, 'unlimited'],
])('%d is written as %s', (value, text) => {
  expect(sixFigures(value).replace('e\u2212', 'e-')).toBe(text);
});
