const kept = 'cloche-kept';

/** Browsers keep pages for later only where the connection is trusted: on this machine itself, or over https. */
const canKeep = (): boolean => window.isSecureContext && 'serviceWorker' in navigator;

/** From now on the page opens without a network as well. */
export function keepPage(): void {
  if (canKeep()) void navigator.serviceWorker.register('sw.js').catch(() => undefined);
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
