/**
 * Service worker: gives the page out of the browser while the host is away. Files in assets/ carry a hash of their content in
 * their name, so a kept one is as good as the host's; the page itself comes from the host first, so that it is never an old one.
 * What the host answers below /api is none of its business.
 */
const KEPT = 'oddwheel-page';
const LIST = './kept-page.json';

/** Keeps what is missing of the files of this page, and lets go of those of an earlier one. */
async function keepAll() {
  const answer = await fetch(LIST, { cache: 'no-store' });
  if (!answer.ok) throw new Error('The list of files is not to be had.');
  const files = (await answer.json()).map((file) => new URL(file, self.registration.scope).href);
  const cache = await caches.open(KEPT);
  const wanted = [self.registration.scope, ...files];
  const kept = new Set((await cache.keys()).map(({ url }) => url));
  await cache.addAll(wanted.filter((url) => url === self.registration.scope || !kept.has(url)));
  for (const url of kept) if (!wanted.includes(url)) await cache.delete(url);
}

async function page(request) {
  try {
    const answer = await fetch(request);
    if (answer.ok) return answer;
    return (answer.status === 404 && (await kept())) || answer;
  } catch (error) {
    const found = await kept();
    if (found) return found;
    throw error;
  }
}

const kept = () => caches.open(KEPT).then((cache) => cache.match(self.registration.scope));

async function file(request) {
  const cache = await caches.open(KEPT);
  return (await cache.match(request, { ignoreVary: true })) ?? fetch(request);
}

self.addEventListener('install', (event) => {
  self.skipWaiting();
  event.waitUntil(keepAll());
});
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));
self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin) return;
  if (request.mode === 'navigate') {
    event.respondWith(page(request));
    // Another version may have come with it.
    event.waitUntil(keepAll().catch(() => undefined));
  } else if (url.pathname.startsWith('/assets/')) event.respondWith(file(request));
});
