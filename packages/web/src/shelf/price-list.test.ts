import { describe, expect, test } from 'vitest';
import type { CatalogueItem, PriceEntry } from './catalogue-data.js';
import {
  headRowOf,
  type ListSettings,
  type PriceRow,
  proposeColumns,
  readPriceList,
  type Shop,
  withPrices,
} from './price-list.js';
import { reportCsv } from './report-csv.js';

const group = { file: 'a.yaml', title: 'test', invented: true, priceDate: '2026-10-01', priceBasis: 'invented' };
const item = (
  id: string,
  name: string,
  kind: CatalogueItem['kind'],
  more: Partial<CatalogueItem> = {},
): CatalogueItem => ({
  id,
  name,
  kind,
  partNumber: null,
  price: null,
  sizes: [],
  data: {},
  group,
  ...more,
});
const items = [
  item('bar-40', 'Profile, 40 x 40', 'profile', { partNumber: 'PR-4040' }),
  item('bar-30', 'Profile, 30 x 30', 'profile'),
  item('nut', 'Nut, slot, M6', 'slot nut'),
  item('rail', 'Track, heavy', 'track', { sizes: ['2 m', '3 m'] }),
  item('twin-a', 'Twin', 'screw'),
  item('twin-b', 'Twin', 'screw'),
];
const shop: Shop = { items, currency: 'EUR', prices: [] };
const settings: ListSettings = {
  columns: { item: 0, description: 1, price: 2, currency: 3, unit: 4, date: 5 },
  headRow: 0,
  decimal: 'comma',
  dateOrder: null,
  currency: null,
  date: '2026-11-25',
  from: 'offer 4711',
  unitsAsSold: false,
  confirmed: new Map(),
};
const head: PriceRow = ['no', 'text', 'price', 'currency', 'unit', 'date'];
const read = (rows: readonly PriceRow[], more: Partial<ListSettings> = {}, here: Shop = shop) =>
  readPriceList([head, ...rows], { ...settings, ...more }, here);
const entries = (rows: readonly PriceRow[], more: Partial<ListSettings> = {}) =>
  read(rows, more).taken.map(({ entry }) => entry);
const reasons = (rows: readonly PriceRow[], more: Partial<ListSettings> = {}) =>
  read(rows, more).refused.map(({ row, reason }) => [row, reason]);

describe('a row of a price list', () => {
  test('belongs to an item by id, part number or name, letter by letter', () => {
    const price = (no: string, text: string): PriceRow => [no, text, '9,99', 'EUR', 'm', '2.11.2026'];
    const expected = { item: 'bar-40', price: '9.99 EUR', per: 'm', on: '2026-11-02', from: 'offer 4711' };
    for (const row of [
      price('bar-40', ''),
      price('pr-4040', ''),
      price('', 'PROFILE, 40 x 40'),
      price('x', 'Profile, 40 x 40'),
    ])
      expect(entries([row])).toEqual([expected]);
  });

  test('whose name is only alike waits for a word', () => {
    const rows: PriceRow[] = [['x', 'Profile 40 x 40 mm', '9,99', 'EUR', 'm', '']];
    expect(read(rows).taken).toEqual([]);
    expect(read(rows).near).toEqual([
      { row: 2, text: 'x, Profile 40 x 40 mm', item: 'bar-40', name: 'Profile, 40 x 40' },
    ]);
    expect(entries(rows, { confirmed: new Map([[2, 'bar-40']]) })).toMatchObject([
      { item: 'bar-40', on: '2026-11-25' },
    ]);
  });

  test('of another size is not alike', () => {
    expect(read([['x', 'Profile 45 x 45', '9,99', 'EUR', 'm', '']]).near).toEqual([]);
  });

  test('of track names the stock piece', () => {
    expect(entries([['rail', '', '20,00', 'EUR', '2000 mm', '']])).toMatchObject([{ item: 'rail', per: '2 m' }]);
    expect(reasons([['rail', '', '20,00', 'EUR', '5 m', '']])).toEqual([[2, expect.stringContaining('2 m, 3 m')]]);
  });

  test.each([
    [['', '', '9,99', 'EUR', 'm', ''], 'names no item'],
    [['zz', '', '9,99', 'EUR', 'm', ''], 'holds no "zz"'],
    [['', 'Twin', '9,99', 'EUR', 'piece', ''], 'twin-a, twin-b'],
    [['nut', '', '', 'EUR', 'piece', ''], 'no price'],
    [['nut', '', '-1,00', 'EUR', 'piece', ''], 'negative'],
    [['nut', '', '=A1*2', 'EUR', 'piece', ''], 'formula'],
    [['nut', '', '1,00', 'CHF', 'piece', ''], 'in CHF, the catalogue in EUR'],
    [['nut', '', '1,00 CHF', 'EUR', 'piece', ''], 'EUR and CHF'],
    [['nut', '', '1,00', '', 'piece', ''], 'no currency'],
    [['nut', '', '1,00', 'EUR', '', ''], 'does not say what the price is for'],
    [['nut', '', '1,00', 'EUR', 'm', ''], 'sold by piece'],
    [['nut', '', '1,00', 'EUR', 'piece', '2/11/2026'], 'cannot be read'],
    [['nut', '', '1,00', 'EUR', 'piece', 'soon'], 'cannot be read'],
  ] as const)('%o is refused', (row, reason) => {
    expect(reasons([row])).toEqual([[2, expect.stringContaining(reason)]]);
  });

  test('without unit or currency counts when a person has said what they are', () => {
    const row: PriceRow = ['nut', '', '1,00', '', '', ''];
    expect(entries([row], { unitsAsSold: true, currency: 'EUR' })).toEqual([
      { item: 'nut', price: '1.00 EUR', per: 'piece', on: '2026-11-25', from: 'offer 4711' },
    ]);
  });
});

describe('a price list', () => {
  const nut = (price: string): PriceRow => ['nut', '', price, 'EUR', 'piece', '2.11.2026'];

  test('with two prices for one item takes neither', () => {
    const report = read([nut('1,00'), nut('2,00')]);
    expect(report.taken).toEqual([]);
    expect(report.refused.map(({ row }) => row)).toEqual([2, 3]);
    expect(report.refused[0]!.reason).toContain('row 3');
  });

  test('that says a price twice takes it once', () => {
    const report = read([nut('1,00'), nut('1,00')]);
    expect(report.taken.map(({ row }) => row)).toEqual([2]);
    expect(report.refused.map(({ row }) => row)).toEqual([3]);
  });

  test('leaves alone what the project has already', () => {
    const own: PriceEntry = { item: 'nut', price: '1.00 EUR', per: 'piece', on: '2026-11-02', from: 'offer 4711' };
    const report = read([nut('1,00')], {}, { ...shop, prices: [own] });
    expect([report.taken, report.unchanged.length]).toEqual([[], 1]);
  });

  test('puts its prices in the place of older ones and after the others', () => {
    const other: PriceEntry = { item: 'bar-30', price: '5.00 EUR', on: '2026-01-01', from: 'letter' };
    const old: PriceEntry = { item: 'nut', price: '3.00 EUR', on: '2026-01-01', from: 'letter' };
    const { taken } = read([nut('1,00'), ['bar-40', '', '9,99', 'EUR', 'm', '']]);
    expect(withPrices([old, other], taken).map(({ item: id, price }) => [id, price])).toEqual([
      ['nut', '1.00 EUR'],
      ['bar-30', '5.00 EUR'],
      ['bar-40', '9.99 EUR'],
    ]);
  });

  test('passes over empty rows, and an empty list is no trouble', () => {
    expect(read([[null, '', null], []])).toEqual({ taken: [], unchanged: [], refused: [], near: [] });
    expect(readPriceList([], settings, shop).refused).toEqual([]);
  });

  test('loses no row, and its report holds each once, without formulas', () => {
    const rows = [
      nut('1,00'),
      ['=cmd()', '', '1,00', 'EUR', 'm', ''] as PriceRow,
      ['zz', '', '', '', '', ''] as PriceRow,
    ];
    const report = read(rows);
    expect(report.taken.length + report.unchanged.length + report.refused.length).toBe(rows.length);
    const csv = reportCsv(report).split('\r\n');
    expect(csv).toHaveLength(rows.length + 2);
    expect(csv[2]).toContain("'=cmd()");
  });

  test('of 50,000 rows is read within seconds', () => {
    const rows = Array.from(
      { length: 50_000 },
      (_, i): PriceRow => [`no-${i}`, `Bracket ${i}`, '1,00', 'EUR', 'piece', ''],
    );
    const begin = performance.now();
    const report = read(rows);
    expect(report.refused).toHaveLength(50_000);
    expect(performance.now() - begin).toBeLessThan(5_000);
  });
});

test('columns are proposed by the words in their heads', () => {
  expect(proposeColumns(['Article no.', 'Description', 'Unit', 'Unit price', 'Currency', 'Valid from'])).toEqual({
    item: 0,
    description: 1,
    unit: 2,
    price: 3,
    currency: 4,
    date: 5,
  });
});

test('the row of heads is found under a letterhead', () => {
  expect(headRowOf([['Offer 4711'], [], ['Item', 'Description', 'Price'], ['a', 'b', 1]])).toBe(2);
  expect(headRowOf([['bar-40', 9.99]])).toBe(-1);
});
