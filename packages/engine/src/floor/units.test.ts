import { unit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { valueOf } from './problem.js';
import { type Dimension, inUnit, parseQuantity } from './units.js';

const read = (text: string, dimension: Dimension) => valueOf(parseQuantity(text, dimension));
const code = (text: string, dimension: Dimension) => {
  const outcome = parseQuantity(text, dimension);
  return outcome.ok ? 'ok' : outcome.problems[0]!.code;
};

// Factors against mathjs (general-purpose library), which shares no code with the table.
test.each([
  ['1064 nm', 'length', '1064 nm'],
  ['7 ft', 'length', '7 ft'],
  ['150 mW', 'power', '150 mW'],
  ['20 MW', 'power', '20 MW'],
  ['0.5 mrad', 'angle', '0.5 mrad'],
  ['90 deg', 'angle', '90 deg'],
  ['55 lb', 'mass', '55 lbm'],
  ['2 mJ', 'energy', '2 mJ'],
  ['80 MHz', 'frequency', '80 MHz'],
  ['5 W/cm2', 'irradiance', '5 W/cm^2'],
  ['2 mJ/cm2', 'radiant exposure', '2 mJ/cm^2'],
  ['160 N/mm2', 'stress', '160 N/mm^2'],
  ['1000 m3/h', 'flow', '1000 m^3/hour'],
  ['600 cfm', 'flow', '600 ft^3/minute'],
  ['90 ft/min', 'velocity', '90 ft/minute'],
  ['14 N m', 'torque', '14 N m'],
  ['1 psi', 'pressure', '1 psi'],
  ['12 g/m2', 'mass per area', '12 g/m^2'],
] as const)('%s is read as mathjs reads it', (text, dimension, theirs) => {
  const expected = unit(theirs)
    .toSI()
    .toNumber(null as never);
  expect(read(text, dimension) / expected).toBeCloseTo(1, 5);
});

// Exact definitions: inch 25.4 mm, foot 304.8 mm, pound-force 4.4482216152605 N (NIST SP 811, Appendix B, from memory).
test.each([
  ['4 ft 6 in', 'length', 1.3716],
  ['4\'6"', 'length', 1.3716],
  ['3 1/2 in', 'length', 0.0889],
  ['7 ft 10 1/2 in', 'length', 7 * 0.3048 + 10.5 * 0.0254],
  ['10,5 mm', 'length', 0.0105],
  ['1 064 nm', 'length', 1064e-9],
  ['25 \u00b5m', 'length', 25e-6],
  ['25 \u03bcm', 'length', 25e-6],
  ['-3 mm', 'length', -0.003],
  ['100 lbf', 'force', 444.82216152605],
  ['20 degC', 'temperature', 293.15],
  ['70 degF', 'temperature', 294.2611111111111],
  ['8 %', 'ratio', 0.08],
  ['0.08', 'ratio', 0.08],
  ['100 fs', 'time', 100e-15],
  ['1e6 W/m2', 'irradiance', 1e6],
  ['1e7 /m3', 'concentration', 1e7],
  ['23e-6 /K', 'expansion', 23e-6],
] as const)('%s is read exactly', (text, dimension, si) => {
  expect(read(text, dimension)).toBeCloseTo(si, 12);
  expect(Math.abs(read(text, dimension) - si)).toBeLessThanOrEqual(1e-12 * Math.abs(si));
});

describe('nothing is guessed', () => {
  test.each([
    ['2400', 'length', 'units/bare-number'],
    ['5 kg', 'length', 'units/wrong-unit'],
    ['5 furlong', 'length', 'units/unknown-unit'],
    ['1,064 nm', 'length', 'units/ambiguous-number'],
    ['1.500.2 mm', 'length', 'units/ambiguous-number'],
    ['', 'length', 'units/empty'],
    ['wide', 'length', 'units/no-number'],
    ['1 W 2 W', 'power', 'units/unknown-unit'],
    ['1e999 m', 'length', 'units/not-finite'],
    ['5 MM', 'length', 'units/unknown-unit'],
  ] as const)('%s as a %s', (text, dimension, expected) => {
    expect(code(text, dimension)).toBe(expected);
  });
});

test('a value goes to another unit and back', () => {
  expect(inUnit(0.0889, 'in', 'length')).toBeCloseTo(3.5, 12);
  expect(inUnit(293.15, 'degC', 'temperature')).toBeCloseTo(20, 12);
});
