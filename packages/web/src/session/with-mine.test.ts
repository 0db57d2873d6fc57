import { expect, test } from 'vitest';
import { briefData, withEntry, withValue } from '../brief/document.js';
import { merge } from './merge.js';
import { withMine } from './with-mine.js';

const base = `tables:
  - { id: table-1, at: [2 m, 1.5 m], length: 2 m }
  - { id: table-2, length: 3 m } # short
`;

/** The text after one press, where both changed the same thing. */
const taken = (mine: string, theirs: string): string => {
  const { text, conflicts } = merge(base, mine, theirs);
  expect(conflicts).toHaveLength(1);
  return withMine(text, conflicts[0]!);
};
const tables = (text: string) => (briefData(text) as { tables: unknown[] }).tables;

test('my value of a field stands, and what else the other did stays', () => {
  const theirs = withEntry(withValue(base, ['tables', 0, 'length'], '5 m'), ['tables'], { id: 'table-3' });
  const text = taken(withValue(base, ['tables', 0, 'length'], '4 m'), theirs);
  expect(tables(text)).toEqual([
    { id: 'table-1', at: ['2 m', '1.5 m'], length: '4 m' },
    { id: 'table-2', length: '3 m' },
    { id: 'table-3' },
  ]);
  expect(text).toContain('# short');
});

test('my place of a thing stands as a whole', () => {
  const text = taken(withValue(base, ['tables', 0, 'at', 0], '1 m'), withValue(base, ['tables', 0, 'at', 1], '9 m'));
  expect(tables(text)[0]).toMatchObject({ at: ['1 m', '1.5 m'] });
});

test('what the other took out comes back as I have changed it', () => {
  const text = taken(withValue(base, ['tables', 0, 'length'], '4 m'), withValue(base, ['tables', 0], undefined));
  expect(tables(text)).toEqual([
    { id: 'table-2', length: '3 m' },
    { id: 'table-1', at: ['2 m', '1.5 m'], length: '4 m' },
  ]);
});

test('what I took out goes, though the other has changed it', () => {
  const text = taken(withValue(base, ['tables', 0], undefined), withValue(base, ['tables', 0, 'length'], '4 m'));
  expect(tables(text)).toEqual([{ id: 'table-2', length: '3 m' }]);
});

test('of a text that cannot be read mine is taken as a whole', () => {
  const mine = base.replace('2 m }', '2 m');
  expect(taken(mine, withValue(base, ['tables', 0, 'length'], '4 m'))).toBe(mine);
});
