import type { Copy, Opened } from './wire.js';

/** A copy with the project that it is of, and when it was written [ms since 1970]. */
interface CopyRecord extends Opened {
  readonly project: string;
  readonly written: number;
}

/** Projects that are kept; the one that was opened longest ago makes way. */
const mostCopies = 30;
/** Least time between two writes: a drag is a step every quarter of a second [ms]. */
const pace = 1000;

const name = 'cloche-opened';
const promised = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

function opened(): Promise<IDBDatabase> {
  const request = indexedDB.open(name, 1);
  request.onupgradeneeded = () =>
    request.result.createObjectStore('projects', { keyPath: 'project' }).createIndex('written', 'written');
  return promised(request);
}

/** Runs with the store of copies; what a browser without room or without the database cannot keep is not kept. */
async function withCopies<T>(
  mode: IDBTransactionMode,
  run: (copies: IDBObjectStore) => Promise<T>,
): Promise<T | undefined> {
  try {
    const database = await opened();
    try {
      return await run(database.transaction('projects', mode).objectStore('projects'));
    } finally {
      database.close();
    }
  } catch {
    return undefined;
  }
}

/** What was last had from the server, in this browser's own database, shared by all windows: the newest state stands. */
export function browserCopy(project: string): Copy {
  let waiting: Opened | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let last: Opened | null = null;
  const writeNow = (): void => {
    clearTimeout(timer);
    timer = undefined;
    const now = waiting;
    waiting = null;
    if (now) void put({ project, ...now, written: Date.now() });
  };
  window.addEventListener('pagehide', writeNow);
  return {
    read: async () =>
      (await withCopies('readonly', (copies) => promised<Opened | undefined>(copies.get(project)))) ?? null,
    write(now) {
      if (now === null) {
        waiting = null;
        void withCopies('readwrite', (copies) => promised(copies.delete(project)));
        return;
      }
      if (last && last.seq === now.seq && last.text === now.text) return;
      timer ??= setTimeout(writeNow, last === null ? 0 : pace);
      last = waiting = now;
    },
    close: () => {
      writeNow();
      window.removeEventListener('pagehide', writeNow);
    },
  };
}

const put = (record: CopyRecord): Promise<unknown> =>
  withCopies('readwrite', async (copies) => {
    const before = await promised<CopyRecord | undefined>(copies.get(record.project));
    if (before && before.seq > record.seq) return;
    await promised(copies.put(record));
    const many = (await promised(copies.count())) - mostCopies;
    if (many <= 0) return;
    const oldest = await promised(copies.index('written').getAllKeys(null, many));
    for (const key of oldest) await promised(copies.delete(key));
  });
