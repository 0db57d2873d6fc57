import { describe, expect, test } from 'vitest';
import type { FieldChange } from './fields.js';
import {
  costText,
  differenceText,
  factText,
  lengthText,
  movedText,
  sizeText,
  thingText,
  turnedText,
} from './messages.js';

test.each([
  [0.2, '200 mm'],
  [0.0125, '12.5 mm'],
  [-0.0005, '\u22120.5 mm'],
  [12.5, '12\u2009500 mm'],
  [0.1 + 0.2, '300 mm'],
  [0.0000004, '0 mm'],
])('%d m reads %s', (metres, text) => {
  expect(lengthText(metres)).toBe(text);
});

test.each([
  [[0, -0.2, 0], '200 mm south'],
  [[0.12, 0.05, 0], '120 mm east, 50 mm north'],
  [[-0.003, 0, 0.1], '3 mm west, 100 mm up'],
] as const)('a move by %j reads %s', (by, text) => {
  expect(movedText(by)).toBe(text);
});

test('a turn says which way', () => {
  expect(turnedText(Math.PI / 12)).toBe('15° counter-clockwise');
  expect(turnedText(-Math.PI / 2)).toBe('90° clockwise');
});

const field = (over: Partial<FieldChange>): FieldChange => ({
  field: 'x',
  before: null,
  after: null,
  quantity: null,
  ...over,
});

describe('both values of a field', () => {
  test('have as many figures as it takes to tell them apart', () => {
    expect(factText(field({ before: 0.15, after: 0.1504, quantity: 'power' }))).toEqual({
      before: '0.15 W',
      after: '0.1504 W',
    });
    expect(factText(field({ before: 532e-9, after: 532.08e-9, quantity: 'wavelength' }))).toEqual({
      before: '532 nm',
      after: '532.1 nm',
    });
  });

  test('say none, yes, no and places in words', () => {
    expect(factText(field({ before: null, after: 12, quantity: 'mass' }))).toEqual({ before: 'none', after: '12 kg' });
    expect(factText(field({ before: true, after: false }))).toEqual({ before: 'yes', after: 'no' });
    expect(factText(field({ before: [4.95, 5.05], after: [4.95, 4.5] }))).toEqual({
      before: '(4950, 5050) mm',
      after: '(4950, 4500) mm',
    });
  });
});

test('a thing is told in one line', () => {
  expect(
    thingText({
      id: 't',
      kind: 'table',
      name: 'T',
      change: 'changed',
      moved: [0, -0.2, 0],
      turned: null,
      along: null,
      resized: [field({ field: 'length', before: 2, after: 1.8, quantity: 'length' })],
      changed: [],
    }),
  ).toBe('moved 200 mm south; length 1800 mm, was 2000 mm');
});

test('sizes are told to a tenth of a millimetre', () => {
  const size = { length: 2.1882, width: 0.9315333, thickness: 0.004, count: { before: 1, after: 0 } };
  expect(sizeText(size)).toBe('2188.2 \u00d7 931.5 \u00d7 4 mm');
});

test('money is told with its sign and currency, and in words where it is not known', () => {
  const cost = (amount: string | null, currency = 'EUR') => ({ amount, currency, unpriced: amount === null ? 1 : 0 });
  expect([costText(cost('12.50')), costText(cost(null))]).toEqual(['12.50 EUR', 'not priced']);
  const both = { before: cost('0.00'), after: cost('12.50') };
  expect(differenceText('12.50', both)).toBe('+12.50 EUR');
  expect(differenceText('-12.50', both)).toBe('\u221212.50 EUR');
  expect(differenceText('0.00', both)).toBe('');
  expect(differenceText(null, { before: cost('1.00'), after: cost(null) })).toBe('not priced');
  expect(differenceText(null, { before: cost('1.00', 'CHF'), after: cost('1.00') })).toBe('another currency');
});
