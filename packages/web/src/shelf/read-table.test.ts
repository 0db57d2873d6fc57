import { strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { readTable } from './read-table.js';
import { separatorOf } from './separator.js';

const bytes = (text: string) => new TextEncoder().encode(text);
const rowsOf = async (data: Uint8Array, separator?: ',' | ';') => {
  const read = await readTable(data, separator);
  if (!read.ok) throw new Error(read.reason);
  return read.sheets[0]!.rows;
};

/** A workbook by hand, after ECMA-376 part 1: shared text, a number, a day (format 14), a formula with its value. */
const sheetXml = (rows: string) =>
  `<?xml version="1.0"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${rows}</sheetData></worksheet>`;
const workbook = (rows: string, more: Record<string, Uint8Array> = {}) =>
  zipSync({
    '[Content_Types].xml': strToU8(
      '<?xml version="1.0"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>',
    ),
    'xl/workbook.xml': strToU8(
      '<?xml version="1.0"?><workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="Prices" sheetId="1" r:id="rId1"/></sheets></workbook>',
    ),
    'xl/_rels/workbook.xml.rels': strToU8(
      '<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/sharedStrings" Target="sharedStrings.xml"/><Relationship Id="rId3" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles" Target="styles.xml"/></Relationships>',
    ),
    'xl/sharedStrings.xml': strToU8(
      '<?xml version="1.0"?><sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><si><t>item</t></si><si><t>price</t></si></sst>',
    ),
    'xl/styles.xml': strToU8(
      '<?xml version="1.0"?><styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><cellXfs count="2"><xf numFmtId="0"/><xf numFmtId="14" applyNumberFormat="1"/></cellXfs></styleSheet>',
    ),
    'xl/worksheets/sheet1.xml': strToU8(sheetXml(rows)),
    ...more,
  });

describe('a text list', () => {
  test('is cut by its separator, with quotes and line breaks inside cells', async () => {
    expect(await rowsOf(bytes('\uFEFFno;text;price\r\na;"two\nlines; ""quoted""";1,5\r\nb;;2\r\n'))).toEqual([
      ['no', 'text', 'price'],
      ['a', 'two\nlines; "quoted"', '1,5'],
      ['b', '', '2'],
    ]);
  });

  test('keeps rows of uneven length and quotes out of place', async () => {
    expect(await rowsOf(bytes('a;b;c\nx;2" pipe;1\ny;z\n'), ';')).toEqual([
      ['a', 'b', 'c'],
      ['x', '2" pipe', '1'],
      ['y', 'z'],
    ]);
  });

  test('in old letters is read and says so', async () => {
    const read = await readTable(Uint8Array.from([...bytes('no,name\na,M'), 0xfc, ...bytes('tze\n')]));
    expect(read.ok && [read.sheets[0]!.rows[1], read.notes.length]).toEqual([['a', 'Mütze'], 1]);
  });

  test.each([
    ['a;b;c\n1;2,5;3\n2;3,5;4\n', ';'],
    ['a,b,c\n1,2,3\n', ','],
    ['a\tb\n1\t2\n', '\t'],
    // Semicolons between cells or between halves of a cell: nobody can tell.
    ['a;b,c\n1;2,3\n', null],
    ['one column\nonly\n', null],
  ])('%j is separated by %j', (text, expected) => {
    expect(separatorOf(text)).toBe(expected);
  });
});

describe('a workbook', () => {
  test('is read with numbers as numbers and days as days', async () => {
    const rows = await rowsOf(
      workbook(
        '<row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c></row><row r="2"><c r="A2" t="inlineStr"><is><t>nut</t></is></c><c r="B2"><f>1+1</f><v>12.5</v></c><c r="C2" s="1"><v>46328</v></c></row>',
      ),
    );
    // Day 46328 from 1899-12-30 on is 2 November 2026: 46327 days after 1900-01-00 with its false leap day.
    const day = new Date(Date.UTC(1899, 11, 30) + 46_328 * 86_400_000).toISOString().slice(0, 10);
    expect(rows[0]!.slice(0, 2)).toEqual(['item', 'price']);
    expect(rows[1]).toEqual(['nut', 12.5, day]);
  });

  test('without rows is empty', async () => {
    expect(await readTable(workbook(''))).toEqual({ ok: false, reason: 'The list is empty.' });
  });

  test('that would burst the memory is refused', async () => {
    const bomb = workbook('', { 'xl/media/large.bin': new Uint8Array(100 * 1024 * 1024) });
    expect(bomb.length).toBeLessThan(1024 * 1024);
    const read = await readTable(bomb);
    expect(read.ok ? '' : read.reason).toContain('more than 80 MB');
  });

  test('that lies about its size is refused all the same', async () => {
    const bomb = workbook('', { 'xl/media/large.bin': new Uint8Array(100 * 1024 * 1024) });
    const view = new DataView(bomb.buffer, bomb.byteOffset, bomb.byteLength);
    // Unpacked sizes in both kinds of heads (APPNOTE 4.3.7 and 4.3.12) are set to ten bytes.
    for (let i = 0; i < bomb.length - 46; i++) {
      const mark = view.getUint32(i, true);
      if (mark === 0x04034b50 && view.getUint32(i + 22, true) > 1e6) view.setUint32(i + 22, 10, true);
      if (mark === 0x02014b50 && view.getUint32(i + 24, true) > 1e6) view.setUint32(i + 24, 10, true);
    }
    const read = await readTable(bomb);
    expect(read.ok).toBe(false);
  });
});

test.each([
  [new Uint8Array(0), 'empty'],
  [bytes('  \n'), 'empty'],
  [Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0]), 'old kind'],
  [Uint8Array.from([1, 0, 2, 0]), 'neither text'],
  [Uint8Array.from([0x50, 0x4b, 3, 4, 1, 2, 3]), 'cannot be read'],
  [new Uint8Array(11 * 1024 * 1024), 'at most 10 MB'],
])('%# no list at all is refused', async (data, reason) => {
  const read = await readTable(data);
  expect(read.ok ? '' : read.reason).toContain(reason);
});
