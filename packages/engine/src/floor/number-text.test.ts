import { expect, test } from 'vitest';
import { prefixedText, unitText, utilisationText } from './number-text.js';

// By hand: the value divided by the prefix of the International System.
test.each([
  [580_691, 'W/m2', '581 kW/m²'],
  [3_000_000, 'W/m2', '3 MW/m²'],
  [2.7736e-4, 'J/m2', '277 \u00b5J/m²'],
  [35_531, 'm', '35.5 km'],
  [2.512, 'm', '2.51 m'],
  [0.0042426, 'm', '4.24 mm'],
  [999.96, 'm', '1 km'],
  [-12_000, 'W/m2', '-12 kW/m²'],
  [0, 'W/m2', '0 W/m²'],
  [Number.POSITIVE_INFINITY, 'm', 'unlimited m'],
])('%d %s reads %s', (value, unit, text) => {
  expect(prefixedText(value, unit)).toBe(text);
});

test.each([
  ['W/m2', 'W/m²'],
  ['m3/s', 'm³/s'],
  ['mm4', 'mm⁴'],
  ['1/m3', '1/m³'],
  ['um', '\u00b5m'],
  ['degC', '\u00b0C'],
  ['mm', 'mm'],
  ['1', ''],
])('the unit %s is printed as "%s"', (unit, printed) => {
  expect(unitText(unit)).toBe(printed);
});

// By hand: rounded to two decimals below ten, to three figures above.
test.each([
  [0.946, '0.95'],
  [1.0004, '1.0004'],
  [4.254, '4.25'],
  [9.9999, '10'],
  [18.07, '18.1'],
  [413.96, '414'],
  [9444.81, '9440'],
  [80_339.16, '80\u2009300'],
  [Number.POSITIVE_INFINITY, 'unlimited'],
])('a utilisation of %d reads %s', (value, text) => {
  expect(utilisationText(value)).toBe(text);
});
