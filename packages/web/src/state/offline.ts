const kept = 'cloche-kept';

/** Browsers keep pages for later only where the connection is trusted: on this machine itself, or over https. */
const canKeep = (): boolean => window.isSecureContext && 'serviceWorker' in navigator;

/** What the page computes from and starts with, besides its own files. */
const startedWith = ['./', 'api/catalogue', 'api/rules', 'api/examples', 'api/opened'];

/** From now on the page opens without a network as well, with every part of it, also those not looked at yet. */
export async function keepPage(): Promise<void> {
  if (!canKeep()) return;
  try {
    await navigator.serviceWorker.register('sw.js');
    const [cache, files] = await Promise.all([caches.open(kept), fetch('files.json')]);
    const own = (await files.json()) as readonly string[];
    const there = new Set((await cache.keys()).map(({ url }) => url));
    const missing = own.filter((file) => !there.has(new URL(file, document.baseURI).href));
    await cache.addAll([...missing, ...startedWith]);
    await dropOld(cache, own);
  } catch {
    // Without a server there is nothing new to keep.
  }
}

/** Files of versions that are no longer served. */
async function dropOld(cache: Cache, own: readonly string[]): Promise<void> {
  const current = new Set(own.map((file) => new URL(file, document.baseURI).href));
  const assets = new URL('assets/', document.baseURI).href;
  for (const request of await cache.keys())
    if (request.url.startsWith(assets) && !current.has(request.url)) await cache.delete(request);
}

const placeOf = (revision: string, name: string): string =>
  `kept/${encodeURIComponent(revision)}/${encodeURIComponent(name)}`;

/** A drawing of a revision: made now, or as it was kept when it was made before. */
export async function keptOrMade(revision: string, name: string, make: () => Promise<Blob>): Promise<Blob> {
  const place = placeOf(revision, name);
  try {
    const made = await make();
    if (canKeep()) await (await caches.open(kept)).put(place, new Response(made));
    return made;
  } catch (error) {
    const before = canKeep() ? await caches.match(place) : undefined;
    if (before) return before.blob();
    throw error;
  }
}
