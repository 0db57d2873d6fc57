import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decimalText, linePrice, totalPrice } from './money.js';

describe('money is decimal', () => {
  // Half away from zero at the digits of ISO 4217 (EUR 2, JPY 0, KWD 3): worked by hand.
  test.each([
    ['3', '0.335', 'EUR', '1.01'],
    ['1', '1.005', 'EUR', '1.01'],
    ['1', '-1.005', 'EUR', '-1.01'],
    ['3', '10.5', 'JPY', '32'],
    ['2.5', '1.0005', 'KWD', '2.501'],
    ['0.1', '0.30', 'EUR', '0.03'],
    ['4', '310.50', 'EUR', '1242.00'],
  ])('%s at %s %s is %s', (quantity, price, currency, line) => {
    expect(linePrice(quantity, price, currency)).toBe(line);
  });

  test('a total of lines is exact where binary fractions are not', () => {
    expect(totalPrice(['0.10', '0.20'], 'EUR')).toBe('0.30');
    expect(
      totalPrice(
        Array.from({ length: 1000 }, () => '0.01'),
        'EUR',
      ),
    ).toBe('10.00');
  });

  test('whole cents multiply like whole numbers', () => {
    fc.assert(
      fc.property(fc.nat(10_000), fc.nat(1_000_000), (n, cents) => {
        const price = `${Math.floor(cents / 100)}.${String(cents % 100).padStart(2, '0')}`;
        const line = linePrice(String(n), price, 'EUR');
        return BigInt(line.replace('.', '')) === BigInt(n) * BigInt(cents);
      }),
      { seed: 3 },
    );
  });

  test('what is no decimal number is a bug', () => {
    expect(() => linePrice('1,5', '2', 'EUR')).toThrow('no decimal number');
  });

  test('numbers lose idle zeros and minus zero', () => {
    expect([decimalText(3.52, 4), decimalText(-0.00001, 3), decimalText(30, 0)]).toEqual(['3.52', '0', '30']);
  });
});
