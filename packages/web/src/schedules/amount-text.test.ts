import fc from 'fast-check';
import { expect, test } from 'vitest';
import { amountOf, joined, unitsDisagree } from './amount-text.js';

test.each([
  ['55 dB', '55', 'dB'],
  ['3.6kW', '3.6', 'kW'],
  ['1e7 /m3', '1e7', '/m3'],
  ['-2.5 K', '-2.5', 'K'],
  ['12000 EUR', '12000', 'EUR'],
  ['0.5 µm', '0.5', 'µm'],
  ['7 ft 10 1/2 in', '7 ft 10 1/2 in', ''],
  ['IEC2014', 'IEC2014', ''],
  ['', '', ''],
])('%j is %j and %j', (text, value, unit) => {
  expect(amountOf(text)).toEqual({ value, unit });
});

test('a number takes the unit beside it, and none is guessed', () => {
  expect(joined({ value: '60', unit: 'dB' })).toBe('60 dB');
  expect(joined({ value: '60', unit: '' })).toBe('60');
  expect(joined({ value: '4 kW', unit: 'W' })).toBe('4 kW');
  expect([unitsDisagree({ value: '4 kW', unit: 'W' }), unitsDisagree({ value: '4 kW', unit: 'kW' })]).toEqual([
    true,
    false,
  ]);
});

test('what is cut is joined again to the same quantity', () => {
  fc.assert(
    fc.property(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.constantFrom('dB', 'kW', '/m3', 'µm', 'm²/s'),
      (n, unit) => {
        expect(joined(amountOf(`${n} ${unit}`))).toBe(`${n} ${unit}`);
      },
    ),
  );
});
