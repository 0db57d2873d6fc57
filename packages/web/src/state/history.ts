/** Texts before and after the present one, newest last; edits of one field in one go count as one. */
export interface History {
  readonly past: readonly string[];
  readonly future: readonly string[];
  /** What was edited last; the next edit with the same key adds no new state. */
  readonly key: string | null;
}

export const emptyHistory: History = { past: [], future: [], key: null };

/** States that are kept: a brief of 20 kB then takes 4 MB at most. */
export const historyLimit = 200;

export function edited(history: History, before: string, key: string | null): History {
  if (key !== null && key === history.key) return { ...history, future: [] };
  return { past: [...history.past, before].slice(-historyLimit), future: [], key };
}

export function undone(history: History, now: string): { readonly text: string; readonly history: History } | null {
  const text = history.past.at(-1);
  if (text === undefined) return null;
  return { text, history: { past: history.past.slice(0, -1), future: [...history.future, now], key: null } };
}

export function redone(history: History, now: string): { readonly text: string; readonly history: History } | null {
  const text = history.future.at(-1);
  if (text === undefined) return null;
  return { text, history: { past: [...history.past, now], future: history.future.slice(0, -1), key: null } };
}
