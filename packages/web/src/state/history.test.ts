import { expect, test } from 'vitest';
import { edited, emptyHistory, historyLimit, redone, undone } from './history.js';

test('undo goes back and redo forward to the same text', () => {
  const history = edited(edited(emptyHistory, 'a', null), 'b', null);
  const back = undone(history, 'c')!;
  expect(back.text).toBe('b');
  expect(redone(back.history, back.text)).toMatchObject({ text: 'c' });
});

test('edits of one field in one go are undone together', () => {
  const history = edited(edited(edited(emptyHistory, 'a', 'x'), 'b', 'x'), 'c', 'x');
  expect(undone(history, 'd')!.text).toBe('a');
});

test('an edit after undo forgets what was undone', () => {
  const back = undone(edited(emptyHistory, 'a', null), 'b')!;
  expect(redone(edited(back.history, back.text, null), 'z')).toBeNull();
});

test('history is bounded', () => {
  let history = emptyHistory;
  for (let i = 0; i < historyLimit + 50; i++) history = edited(history, String(i), null);
  expect(history.past).toHaveLength(historyLimit);
});

test('nothing to undo is told', () => {
  expect(undone(emptyHistory, 'a')).toBeNull();
  expect(redone(emptyHistory, 'a')).toBeNull();
});
