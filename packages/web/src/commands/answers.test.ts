import { expect, test } from 'vitest';
import { type Answerable, answersTo, rank } from './answers.js';

const titled = (...titles: readonly string[]): readonly Answerable[] =>
  titles.map((title, i) => ({ id: String(i), title, group: '', run: () => undefined }));

test('every typed word must begin a word of the title, in any order', () => {
  expect(rank('lay heights', 'Lay over: Heights')).not.toBeNull();
  expect(rank('hei lay', 'Lay over: Heights')).not.toBeNull();
  expect(rank('eights', 'Lay over: Heights')).toBeNull();
});

test('a whole word that stands first answers best', () => {
  const found = answersTo('door', titled('Put in: a door', 'Doors', 'Door to the corridor'));
  expect(found.map((each) => each.title)).toEqual(['Door to the corridor', 'Doors', 'Put in: a door']);
});

test('accents and capitals make no difference, and nothing typed finds nothing', () => {
  expect(answersTo('MESSGERAT', titled('Messgerät')).length).toBe(1);
  expect(answersTo('  ', titled('Undo'))).toEqual([]);
});
