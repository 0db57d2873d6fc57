// Keeps what the page was opened with, so that it opens again without a network. What the network answers always comes first;
// what was kept only stands in for it.
const kept = 'cloche-kept';

// A new version takes over at once: it keeps the same things in the same way.
self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

/**
 * Streams and archives are no use later, and the text of a project and its steps are kept by the page itself, which must know
 * whether the server has answered; everything else of this server that is only read may be kept.
 */
const mayKeep = (request) => {
  const { origin, pathname } = new URL(request.url);
  const notKept = /\/(live|export|steps)$|\/api\/projects\/[^/]+$/;
  return request.method === 'GET' && origin === self.location.origin && !notKept.test(pathname);
};

/** A file whose name tells its content never changes: the one that is kept is the one that is meant. */
const isNamedByContent = (request) => new URL(request.url).pathname.includes('/assets/');

const answer = async (request) => {
  if (isNamedByContent(request)) {
    const same = await caches.match(request, { ignoreVary: true });
    if (same) return same;
  }
  try {
    const response = await fetch(request);
    if (response.ok) (await caches.open(kept)).put(request, response.clone());
    return response;
  } catch (error) {
    const before = await caches.match(request, { ignoreVary: true });
    if (before) return before;
    throw error;
  }
};

self.addEventListener('fetch', (event) => {
  if (mayKeep(event.request)) event.respondWith(answer(event.request));
});
