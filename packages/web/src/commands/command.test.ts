import { expect, test } from 'vitest';
import { isPlainKey, keysOf } from './command.js';

const press = (key: string, held: Partial<Record<'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey', boolean>> = {}) =>
  keysOf({ key, ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, ...held });

test('keys are written one way, whichever way they are pressed', () => {
  expect(press('z', { ctrlKey: true })).toBe('Ctrl+Z');
  expect(press('Z', { metaKey: true, shiftKey: true })).toBe('Ctrl+Shift+Z');
  expect(press('?', { shiftKey: true })).toBe('?');
  expect(press('Delete')).toBe('Delete');
  expect(press('ArrowUp', { shiftKey: true })).toBe('Shift+ArrowUp');
});

test('only single characters are plain keys', () => {
  expect(['M', '?', 'Shift+M'].map(isPlainKey)).toEqual([true, true, true]);
  expect(['Ctrl+Z', 'Delete', 'Escape'].map(isPlainKey)).toEqual([false, false, false]);
});
