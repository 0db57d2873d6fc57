import { parseQuantity } from '@cloche/engine';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lengthText, spokenLength, typedLength, writtenLength } from './length-text.js';

test('lengths are shown as the project is measured', () => {
  expect(lengthText(2.4, 'metric')).toBe('2400 mm');
  expect(lengthText(0.0015, 'metric')).toBe('1.5 mm');
  expect(lengthText(12.3456, 'metric')).toBe('12\u2009345.6 mm');
  // 4 ft 6 1/2 in = 54.5 in = 1.3843 m by the exact inch of 25.4 mm.
  expect(lengthText(1.3843, 'imperial')).toBe('4 ft 6 1/2 in');
  expect(lengthText(0.3048, 'imperial')).toBe('1 ft');
  expect(lengthText(0.0127, 'imperial')).toBe('1/2 in');
  expect(lengthText(0, 'imperial')).toBe('0 in');
  expect(spokenLength(2.4, 'metric')).toBe('2.40 m');
  expect(spokenLength(2.4125, 'metric')).toBe('2.4125 m');
});

test('lengths are typed in either system, and a number alone in the unit of the sheet', () => {
  expect(typedLength('3.2 m', 'imperial')).toBeCloseTo(3.2, 12);
  expect(typedLength('4 ft 6 in', 'metric')).toBeCloseTo(1.3716, 12);
  expect(typedLength('900', 'metric')).toBeCloseTo(0.9, 12);
  expect(typedLength('36', 'imperial')).toBeCloseTo(0.9144, 12);
  expect(typedLength('nine', 'metric')).toBeNull();
});

test('what is written into the brief reads back to a tenth of a millimetre', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -5, max: 60, noNaN: true }),
      fc.constantFrom('metric' as const, 'imperial' as const),
      (metres, units) => {
        const read = parseQuantity(writtenLength(metres, units), 'length');
        expect(read.ok && Math.abs(read.value - metres)).toBeLessThan(1e-4);
      },
    ),
  );
});
