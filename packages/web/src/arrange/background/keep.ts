/** Where the files of backgrounds are kept, named by their SHA-256. */
export interface BackgroundKeep {
  readonly put: (file: Blob) => Promise<string>;
  readonly get: (hash: string) => Promise<Blob | null>;
}

async function hashOf(file: Blob): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', await file.arrayBuffer());
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

const answered = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((done, failed) => {
    request.onsuccess = () => done(request.result);
    request.onerror = () => failed(request.error);
  });

const store = 'files';

async function opened(): Promise<IDBDatabase> {
  const request = indexedDB.open('cloche.backgrounds', 1);
  request.onupgradeneeded = () => request.result.createObjectStore(store);
  return answered(request);
}

/** In this browser, until the browser's data is cleared. */
export const browserKeep: BackgroundKeep = {
  async put(file) {
    const hash = await hashOf(file);
    const database = await opened();
    try {
      await answered(database.transaction(store, 'readwrite').objectStore(store).put(file, hash));
    } finally {
      database.close();
    }
    return hash;
  },
  async get(hash) {
    const database = await opened();
    try {
      const found: unknown = await answered(database.transaction(store).objectStore(store).get(hash));
      return found instanceof Blob ? found : null;
    } finally {
      database.close();
    }
  },
};
