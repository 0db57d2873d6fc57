/** Something a person can do, by its key, from the ask line or from a button: one description for all three. */
export interface Command {
  readonly id: string;
  /** What it does, in the words that a person would look for: "Undo". */
  readonly title: string;
  /** Part of the list of keys that it stands under. */
  readonly group: string;
  /** `Ctrl+Shift+Z` (Cmd on a Mac), or a single character that works while nothing is being typed. */
  readonly keys?: string;
  /** False while it cannot be done; it is then not offered. */
  readonly can?: () => boolean;
  readonly run: () => void;
}

/** The keys of an event as they are written: modifiers in a fixed order, then the key. */
export function keysOf(event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>): string {
  const single = event.key.length === 1;
  const letter = single && event.key.toLowerCase() !== event.key.toUpperCase();
  // Shift is already in characters such as "?".
  const shift = event.shiftKey && (letter || !single);
  const parts = [event.ctrlKey || event.metaKey ? 'Ctrl' : '', event.altKey ? 'Alt' : '', shift ? 'Shift' : ''];
  return [...parts.filter(Boolean), single ? event.key.toUpperCase() : event.key].join('+');
}

/** True for keys that a person may type as text. */
export const isPlainKey = (keys: string): boolean => [...keys.replace(/^Shift\+/, '')].length === 1;
