// Keeps what the fitters' sheet was opened with, so that it opens again without a network. What the network answers always comes
// first; what was kept only stands in for it.
const kept = 'cloche-kept';

// A new version takes over at once: it keeps the same things in the same way.
self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

/** Streams and archives are no use later; everything else of this server that is only read may be kept. */
const mayKeep = (request) => {
  const { origin, pathname } = new URL(request.url);
  return request.method === 'GET' && origin === self.location.origin && !/\/(live|export)$/.test(pathname);
};

const answer = async (request) => {
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
