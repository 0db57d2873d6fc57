import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Column } from './columns.js';
import { csvText, guardedText } from './csv.js';

const columns: readonly Column<{ readonly word: string; readonly size: number | null }>[] = [
  { head: 'word', width: 10, kind: 'text', of: (r) => r.word },
  { head: 'size', width: 10, kind: 'number', places: 3, of: (r) => r.size },
];

test('any text comes back through an RFC 4180 reader', () => {
  fc.assert(
    fc.property(fc.array(fc.string({ unit: 'binary-ascii' }), { minLength: 1 }), (words) => {
      const rows = words.map((word) => ({ word, size: -1.5 }));
      const read = parse(csvText(columns, rows), { columns: true, record_delimiter: '\r\n' }) as {
        word: string;
        size: string;
      }[];
      expect(read.map((r) => r.word)).toEqual(words.map(guardedText));
      expect(read.every((r) => r.size === '-1.5')).toBe(true);
    }),
    { seed: 9 },
  );
});

// OWASP guidance as quoted in the handbook of deliverables 2.6: = + - @ tab CR, also after spaces and line breaks.
test.each(['=1+1', '+1', '-1', '@x', '\tx', '\rx', '  =1', '\u00a0=1', 'a\n=1', '\uff1d1+1', '\uff201'])(
  '%j is not run by a spreadsheet',
  (raw) => {
    expect(guardedText(raw)).toBe(`'${raw}`);
  },
);
// The same guidance (from memory): what follows a separator of another country's spreadsheets opens a cell, too.
test.each([
  ['a;=1+1', "a;'=1+1"],
  ['a; =1;@x', "a; '=1;'@x"],
  ['a\t+1', "a\t'+1"],
  ['=1;=2', "'=1;'=2"],
])('%j is not run where cells are parted by semicolons or tabs', (raw, guarded) => {
  expect(guardedText(raw)).toBe(guarded);
});
test.each(['a; b', 'a;b=1', 'a=1', '40 x 40', '', 'M8 - A2'])('%j stays as it is', (raw) => {
  expect(guardedText(raw)).toBe(raw);
});

test('records end with CRLF and an empty number is an empty field', () => {
  expect(csvText(columns, [{ word: 'a', size: null }])).toBe('word,size\r\na,\r\n');
});
