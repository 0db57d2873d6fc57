import { expect, test } from 'vitest';
import { prefixedText } from './number-text.js';

// By hand: the value divided by the prefix of the International System.
test.each([
  [580_691, 'W/m2', '581 kW/m2'],
  [3_000_000, 'W/m2', '3 MW/m2'],
  [2.7736e-4, 'J/m2', '277 \u00b5J/m2'],
  [35_531, 'm', '35.5 km'],
  [2.512, 'm', '2.51 m'],
  [0.0042426, 'm', '4.24 mm'],
  [999.96, 'm', '1 km'],
  [-12_000, 'W/m2', '-12 kW/m2'],
  [0, 'W/m2', '0 W/m2'],
  [Number.POSITIVE_INFINITY, 'm', 'unlimited m'],
])('%d %s reads %s', (value, unit, text) => {
  expect(prefixedText(value, unit)).toBe(text);
});
