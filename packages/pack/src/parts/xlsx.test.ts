import { describe, expect, test } from 'vitest';
import { unzip } from '../../test/unzip.js';
import type { Column } from './columns.js';
import { aboutTable, tableOf, withTotals, xlsxBytes } from './xlsx.js';
import { withFixedTimes } from './zip-times.js';

const columns: readonly Column<{ readonly name: string; readonly mass: number; readonly price: string }>[] = [
  { head: 'name', width: 20, kind: 'text', of: (r) => r.name },
  { head: 'mass_kg', width: 10, kind: 'number', places: 3, of: (r) => r.mass },
  { head: 'linePrice', width: 10, kind: 'money', of: (r) => r.price },
];
const tables = () => [
  aboutTable([['Status', 'NOT APPROVED']]),
  tableOf('Parts', columns, [{ name: '=1+1', mass: 1.25, price: '0.10' }]),
];

describe('a workbook', () => {
  test('holds text that looks like a formula as text, numbers as numbers, money as its decimal text', async () => {
    const entries = unzip(await xlsxBytes(tables()));
    const sheet = entries.get('xl/worksheets/sheet2.xml')!.text;
    const shared = [...entries.get('xl/sharedStrings.xml')!.text.matchAll(/<t[^>]*>([^<]*)<\/t>/g)].map((m) => m[1]);
    expect(sheet).not.toContain('<f>');
    expect(sheet).toMatch(/<c r="A2"[^>]*t="s"/);
    expect(shared).toContain('=1+1');
    expect(sheet).toMatch(/<c r="B2"[^>]*><v>1.25<\/v>/);
    expect(shared).toContain('0.10');
  });

  test.each(['=1+1', '+1', '-1', '@x', '\tx', '\rx', '=HYPERLINK("http://example.org")'])(
    'holds %j as text in every kind of row',
    async (risky) => {
      const table = tableOf('Parts', columns, [{ name: risky, mass: -1.25, price: '0.10' }]);
      const about = aboutTable([[risky, risky]]);
      const entries = unzip(await xlsxBytes([about, withTotals(table, columns, { name: risky, mass_kg: -2 })]));
      const sheets = [1, 2].map((n) => entries.get(`xl/worksheets/sheet${n}.xml`)!.text);
      for (const sheet of sheets) expect(sheet).not.toMatch(/<f[ >]|<hyperlink/);
      const strings = [...sheets.join('').matchAll(/<c r="([A-Z]\d)"[^>]*t="s"/g)].map((m) => m[1]);
      // Both cells of the first sheet; head, name, price and the name of the totals of the second.
      expect(strings).toEqual(['A1', 'B1', 'A1', 'B1', 'C1', 'A2', 'C2', 'A3']);
      expect(sheets[1]).toMatch(/<c r="B2"[^>]*><v>-1.25<\/v>/);
    },
  );

  test('keeps the head in view and names its sheets', async () => {
    const entries = unzip(await xlsxBytes(tables()));
    expect(entries.get('xl/worksheets/sheet2.xml')!.text).toContain('state="frozen"');
    expect(entries.get('xl/workbook.xml')!.text).toMatch(/name="About".*name="Parts"/s);
  });

  test('carries no time of its making', async () => {
    const [a, b] = [await xlsxBytes(tables()), await xlsxBytes(tables())];
    expect(Buffer.compare(a, b)).toBe(0);
    // 1 January 1980, 0:00 (ZIP application note 4.4.6): day 1, month 1 << 5.
    for (const entry of unzip(a).values()) expect([entry.date, entry.time]).toEqual([0x21, 0]);
  });

  test('bytes that are no archive are refused', () => {
    expect(() => withFixedTimes(new Uint8Array(40))).toThrow('no ZIP archive');
  });
});
