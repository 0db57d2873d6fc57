import fc from 'fast-check';
import { expect, test } from 'vitest';
import { blockText, csvFile, readBlock } from './block-text.js';

test.each([
  [
    'a\tb\nc\td',
    [
      ['a', 'b'],
      ['c', 'd'],
    ],
  ],
  ['a\tb\r\n', [['a', 'b']]],
  ['', [['']]],
  ['a\t\tb', [['a', '', 'b']]],
  ['"two\nlines"\tb', [['two\nlines', 'b']]],
  ['"say ""so"""\tb', [['say "so"', 'b']]],
  ['2" pipe\t"loose', [['2" pipe', '"loose']]],
  ['"2" pipe"\tb', [['"2" pipe"', 'b']]],
])('%j is a block', (text, expected) => {
  expect(readBlock(text)).toEqual(expected);
});

test('what is copied is pasted again as it was', () => {
  const cell = fc.string().filter((text) => !/^[=+\-@\t\r]/.test(text));
  const block = fc
    .integer({ min: 1, max: 4 })
    .chain((wide) => fc.array(fc.array(cell, { minLength: wide, maxLength: wide }), { minLength: 1, maxLength: 4 }));
  fc.assert(
    fc.property(block, (rows) => {
      // A last row of one empty cell is the line break that ends the row before it.
      fc.pre(rows[0]!.length > 1 || rows.at(-1)![0] !== '');
      expect(readBlock(blockText(rows.map((row) => row.map((text) => ({ text, figure: false })))))).toEqual(rows);
    }),
  );
});

test.each(['=1+1', '+1', '-1', '@x', '\tx', '\rx'])('the text %j leaves with an apostrophe', (text) => {
  expect(readBlock(blockText([[{ text, figure: false }]]))).toEqual([[`'${text}`]]);
  expect(csvFile([[{ text, figure: false }]])).toContain(`'${text[0]}`);
});

test('a negative figure stays a figure', () => {
  expect(blockText([[{ text: '-0.35 m', figure: true }]])).toBe('-0.35 m');
  expect(blockText([[{ text: '-cmd', figure: true }]])).toBe("'-cmd");
});

test('a file has a record a line and quotes where they are needed', () => {
  const cell = (text: string) => ({ text, figure: false });
  expect(
    csvFile([
      [cell('a,b'), cell('say "so"')],
      [cell(' c'), cell('d')],
    ]),
  ).toBe('\uFEFF"a,b","say ""so"""\r\n" c",d\r\n');
});
