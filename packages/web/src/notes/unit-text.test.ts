import { expect, test } from 'vitest';
import { unitText } from './unit-text.js';

test.each([
  ['W/m2', 'W/m²'],
  ['m3/s', 'm³/s'],
  ['N/mm2', 'N/mm²'],
  ['mm', 'mm'],
  ['1', ''],
])('%s is printed as "%s"', (unit, printed) => {
  expect(unitText(unit)).toBe(printed);
});
