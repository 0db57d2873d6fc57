import { expect, test } from 'vitest';
import { localDay, localNumber } from './locale.js';

test('numbers take the decimal sign of the locale, and nothing else of a text changes', () => {
  expect(localNumber('1.25', 'de-DE')).toBe('1,25');
  expect(localNumber('1.25', 'en-GB')).toBe('1.25');
  expect(localNumber('12 345.5 mm. Done.', 'fr-FR')).toBe('12 345,5 mm. Done.');
});

// Unicode CLDR, medium date formats.
test('days are written as in the locale', () => {
  expect(localDay('2026-03-09T12:00:00Z', 'de-DE')).toBe('09.03.2026');
  expect(localDay('2026-03-09T12:00:00Z', 'en-GB')).toBe('9 Mar 2026');
});
