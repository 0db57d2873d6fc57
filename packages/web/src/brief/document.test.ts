import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { briefData, offsetOf, withEntry, withValue, withValues } from './document.js';

const text = `# invented
tables:
  - id: table-1 # the long one
    at: [2 m, 1.5 m]
    length: 2.4 m
`;

test('a changed value leaves every other letter as it was', () => {
  expect(withValue(text, ['tables', 0, 'at', 1], '1.7 m')).toBe(text.replace('1.5 m', '1.7 m'));
});

test('values that change together are each put in their place', () => {
  const moved = withValues(text, [
    [['tables', 0, 'at', 0], '12.25 m'],
    [['tables', 0, 'at', 1], '3 m'],
  ]);
  expect(moved).toBe(text.replace('[2 m, 1.5 m]', '[12.25 m, 3 m]'));
  expect(parse(withValues(text, [[['tables', 0, 'height'], '1 m']])).tables[0].height).toBe('1 m');
});

test('a text that could be read as something else is quoted', () => {
  for (const odd of ['4\'6"', 'yes', '12', 'a, b', 'x: y', ' spaced', '# no', ''])
    expect(parse(withValue(text, ['tables', 0, 'length'], odd)).tables[0].length).toBe(odd);
});

test('a value that is not there yet is added, and taken away again', () => {
  const added = withValue(text, ['tables', 0, 'height'], '0.9 m');
  expect(parse(added).tables[0].height).toBe('0.9 m');
  expect(added).toContain('# the long one');
  expect(parse(withValue(added, ['tables', 0, 'height'], undefined)).tables[0].height).toBeUndefined();
});

test('an entry is added to a list, or makes the list', () => {
  expect(parse(withEntry(text, ['tables'], { id: 'table-2' })).tables).toHaveLength(2);
  expect(parse(withEntry(text, ['layout', 'runs'], { id: 'run-1' })).layout.runs).toEqual([{ id: 'run-1' }]);
});

test('a broken text stays as it is', () => {
  const broken = 'a: [1, 2';
  expect(briefData(broken)).toBeNull();
  expect(withValue(broken, ['a'], 1)).toBe(broken);
});

test('line and column lead to the place in the text', () => {
  expect(text.slice(offsetOf(text, 4, 5), offsetOf(text, 4, 5) + 3)).toBe('at:');
});
