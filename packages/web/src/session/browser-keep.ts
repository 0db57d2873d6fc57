import type { Keep, Kept } from './wire.js';

const prefix = (project: string): string => `cloche.kept/${project}/`;
const lockOf = (page: string): string => `cloche.page/${page}`;

/**
 * Unsent edits in this browser's own storage, one record for each window: a page and the number of the project that it opened. A
 * page that lives holds a lock by its name; records of other pages were left by one that was closed or killed, those of this
 * page by a project that it laid down. Where the browser has no locks every other record is taken
 * up: the same steps arriving twice are known again by their window and group.
 */
export async function browserKeep(project: string, page: string, window: string): Promise<Keep> {
  const own = prefix(project) + window;
  const left: string[] = [];
  for (const key of keysOf(project)) if (await isLeft(key.slice(prefix(project).length), page)) left.push(key);
  return {
    write(kept) {
      try {
        if (kept) localStorage.setItem(own, JSON.stringify(kept));
        else localStorage.removeItem(own);
        return true;
      } catch {
        return false;
      }
    },
    left: () => left.flatMap(read),
    clearLeft: () => {
      for (const key of left) localStorage.removeItem(key);
    },
  };
}

/** Holds this page's name for as long as it lives. */
export function holdPage(page: string): void {
  void navigator.locks?.request(lockOf(page), () => new Promise(() => {}));
}

const keysOf = (project: string): readonly string[] =>
  Array.from({ length: localStorage.length }, (_, i) => localStorage.key(i) ?? '').filter((key) =>
    key.startsWith(prefix(project)),
  );

async function isLeft(window: string, here: string): Promise<boolean> {
  const page = window.split('-')[0]!;
  if (page === here || !navigator.locks) return true;
  return navigator.locks.request(lockOf(page), { ifAvailable: true }, (lock) => lock !== null);
}

/** A record that cannot be read was never written by us. */
function read(key: string): readonly Kept[] {
  try {
    const kept = JSON.parse(localStorage.getItem(key) ?? '') as Kept;
    return Array.isArray(kept.steps) && Array.isArray(kept.conflicts) && typeof kept.text === 'string' ? [kept] : [];
  } catch {
    return [];
  }
}
