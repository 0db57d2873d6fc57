import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decimalOfColumn, isDoubtfulDay, readDay, readPrice } from './price-text.js';

const amount = (cell: string | number | null, decimal: 'comma' | 'point') => {
  const read = readPrice(cell, decimal);
  return read.ok ? read.amount : read.why;
};

describe('a price', () => {
  test.each([
    ['1.234,56', 'comma', '1234.56'],
    ['1,234.56', 'point', '1234.56'],
    ['1 234,5', 'comma', '1234.50'],
    ['12', 'point', '12'],
    ['€ 12,50', 'comma', '12.50'],
    ['12.50 EUR', 'point', '12.50'],
    ['1\u00a0234,56 €', 'comma', '1234.56'],
    ["1'234.56", 'point', '1234.56'],
    // What binary fractions make of 0.1 + 0.2.
    [0.30000000000000004, 'point', '0.30'],
    [1250, 'comma', '1250'],
  ] as const)('%s, decimals with a %s, is %s', (cell, decimal, expected) => {
    expect(amount(cell, decimal)).toBe(expected);
  });

  test.each([
    ['=1+1', 'point', 'formula'],
    ['@SUM(A1)', 'point', 'formula'],
    ['-3.00', 'point', 'negative'],
    ['(3.00)', 'point', 'negative'],
    ['3,00-', 'comma', 'negative'],
    [-3, 'point', 'negative'],
    ['0,00', 'comma', 'zero'],
    [0, 'point', 'zero'],
    ['', 'point', 'none'],
    [null, 'point', 'none'],
    ['on request', 'point', 'unreadable'],
    // Groups of three alone make thousands.
    ['1.23', 'comma', 'unreadable'],
    ['1,2345.6', 'point', 'unreadable'],
    ['1e3', 'point', 'unreadable'],
  ] as const)('%s is refused: %s, %s', (cell, decimal, why) => {
    expect(amount(cell, decimal)).toBe(why);
  });

  test('is read as it was written, whichever way it was grouped', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99_999_999 }), (cents) => {
        const [whole, part] = [String(Math.floor(cents / 100)), String(cents % 100).padStart(2, '0')];
        const grouped = (sign: string) => whole.replace(/\B(?=(\d{3})+$)/g, sign);
        expect(amount(`${grouped('.')},${part}`, 'comma')).toBe(`${whole}.${part}`);
        expect(amount(`${grouped(',')}.${part}`, 'point')).toBe(`${whole}.${part}`);
      }),
    );
  });
});

test.each([
  [['1.234,56', '12'], 'comma'],
  [['12,5'], 'comma'],
  [['1,234.56', '1,234'], 'point'],
  [['12.50'], 'point'],
  [['12', '400'], 'point'],
  // A thousand and a bit, or one and a bit: nobody can tell.
  [['1.234'], null],
  [['1,234', '12'], null],
  [['12,5', '12.5'], null],
] as const)('the column %o is written with %s', (cells, expected) => {
  expect(decimalOfColumn(cells)).toBe(expected);
});

describe('a day', () => {
  test.each([
    ['2026-11-02', null, '2026-11-02'],
    ['2.11.2026', null, '2026-11-02'],
    ['25/11/2026', null, '2026-11-25'],
    ['11/25/2026', null, '2026-11-25'],
    ['2/11/2026', 'day first', '2026-11-02'],
    ['2/11/2026', 'month first', '2026-02-11'],
    ['2/11/2026', null, null],
    ['30.2.2026', null, null],
    ['2.11.26', null, null],
    ['soon', 'day first', null],
  ] as const)('%s, %s, is %s', (text, order, expected) => {
    expect(readDay(text, order)).toBe(expected);
  });

  test('is doubtful only where its parts can change places', () => {
    expect(['2/11/2026', '25/11/2026', '3/3/2026', '2.11.2026'].map(isDoubtfulDay)).toEqual([
      true,
      false,
      false,
      false,
    ]);
  });
});
