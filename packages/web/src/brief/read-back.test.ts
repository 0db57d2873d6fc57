import { expect, test } from 'vitest';
import { readBack } from './read-back.js';

test.each([
  ['2.4 m', 'length', '2400 mm'],
  ['4 ft 6 in', 'length', '1372 mm'], // 1371.6 mm exactly (NIST SP 811)
  ['1.064 um', 'length', '1064 nm'],
  ['0.5 mrad', 'angle', '0.0286 deg'], // 0.5e-3 * 180 / pi
  ['68 degF', 'temperature', '20 °C'],
  ['0.3 m3/s', 'flow', '1080 m³/h'],
] as const)('%s is read back as %s %s', (text, dimension, said) => {
  expect(readBack(text, dimension)).toBe(said);
});

test('what already stands in the unit of the sheet is not repeated', () => {
  expect(readBack('2400 mm', 'length')).toBeNull();
});

test('what cannot be read is not read back', () => {
  expect(readBack('2400', 'length')).toBeNull();
});
