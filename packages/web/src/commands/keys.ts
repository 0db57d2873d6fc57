import { useEffect } from 'react';
import { allCommands } from './all.js';
import { isPlainKey, keysOf } from './command.js';
import { useKeySettings } from './key-settings.js';

/** Where letters are text and not keys. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('input, textarea, select, [contenteditable="true"]') !== null;

/** Other ways in which people know the same keys. */
const same: Readonly<Record<string, string>> = { 'Ctrl+Y': 'Ctrl+Shift+Z' };

/** Runs what a key stands for. A layer that has used the key itself prevents its default. */
export function useKeys(): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented || document.querySelector('dialog[open]')) return;
      const pressed = keysOf(event);
      const keys = same[pressed] ?? pressed;
      const plain = !/^(Ctrl|Alt)\+/.test(keys);
      if (plain && isTyping(event.target)) return;
      if (isPlainKey(keys) && !useKeySettings.getState().single) return;
      const command = allCommands().find((each) => each.keys === keys && (each.can?.() ?? true));
      if (!command) return;
      event.preventDefault();
      command.run();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}
