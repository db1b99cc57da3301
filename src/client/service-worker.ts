/**
 * Makes the whole guide readable without signal after one visit. The build puts `OFFLINE` in front of this file: a new
 * guide is a new worker, with a cache of its own name, and the old cache goes when the new one is complete.
 */
declare const OFFLINE: { readonly version: string; readonly base: string };

/** Every file of the guide that is kept, with a hash of what is in it. */
interface OfflineList {
  readonly version: string;
  readonly files: readonly (readonly [path: string, hash: string])[];
}

const worker = self as unknown as ServiceWorkerGlobalScope;
const PREFIX = `peg-atlas ${OFFLINE.base} `;
const CACHE = PREFIX + OFFLINE.version;
const LIST = addressOf('offline-list.json');
/** How long a page may take from the network before the kept copy is shown: at the water a signal comes and goes. */
const PATIENCE_MILLISECONDS = 2500;
const FETCHED_AT_ONCE = 6;

worker.addEventListener('install', (event) => event.waitUntil(fill().then(() => worker.skipWaiting())));
worker.addEventListener('activate', (event) => event.waitUntil(takeOver()));
worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== worker.location.origin || !url.pathname.startsWith(OFFLINE.base))
    return;
  event.respondWith(request.mode === 'navigate' ? page(request, event) : part(request));
});

function addressOf(path: string): string {
  return new URL(OFFLINE.base + path, worker.location.origin).href;
}

/**
 * Fetches what is missing. What a signal lost half-way has brought is kept for the next try, and what did not change since
 * the last guide is copied instead of fetched.
 */
async function fill(): Promise<void> {
  const response = await fetch(LIST, { cache: 'no-cache' });
  const list = (await response.clone().json()) as OfflineList;
  if (list.version !== OFFLINE.version) throw new Error('A newer guide has been published: the next visit fetches it.');
  const cache = await caches.open(CACHE);
  const before = await copiesBefore();
  const waiting = [...list.files];
  const fetchNext = async (): Promise<void> => {
    for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
      const [path, hash] = next;
      const address = addressOf(path);
      if ((await cache.match(address)) !== undefined) continue;
      const copy = await before(path, hash);
      await cache.put(address, copy ?? (await fetched(address)));
    }
  };
  await Promise.all(Array.from({ length: FETCHED_AT_ONCE }, fetchNext));
  await cache.put(LIST, response);
}

/** A response whose address is its own: one that was redirected may not answer a navigation. */
async function fetched(address: string): Promise<Response> {
  const response = await fetch(address, { cache: 'no-cache' });
  if (!response.ok) throw new Error(`${address} answered ${response.status}.`);
  return new Response(response.body, { headers: response.headers });
}

/** Finds the copy an earlier guide kept of a file, where its content is still the same. */
async function copiesBefore(): Promise<(path: string, hash: string) => Promise<Response | undefined>> {
  const known = new Map<string, Cache>();
  for (const name of await otherCaches()) {
    const cache = await caches.open(name);
    const list = (await (await cache.match(LIST))?.json()) as OfflineList | undefined;
    for (const [path, hash] of list?.files ?? []) known.set(`${hash} ${path}`, cache);
  }
  return async (path, hash) => known.get(`${hash} ${path}`)?.match(addressOf(path));
}

/** Caches of earlier guides at this address. */
async function otherCaches(): Promise<string[]> {
  return (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
}

/** The new copy is complete: the old ones go, and pages that are open are served from the new one. */
async function takeOver(): Promise<void> {
  for (const name of await otherCaches()) await caches.delete(name);
  await worker.clients.claim();
}

/**
 * A page from the network while that answers soon, so that a hazard published today is read today; else the kept copy,
 * which says how old it is.
 */
async function page(request: Request, event: FetchEvent): Promise<Response> {
  const network = fetch(request);
  // Whether it comes late or never, nobody is waiting for it any more.
  event.waitUntil(network.catch(() => undefined));
  const late = new Promise<null>((resolve) => setTimeout(() => resolve(null), PATIENCE_MILLISECONDS));
  const response = await Promise.race([network.catch(() => null), late]);
  if (response !== null && response.status < 500) return response;
  return (await keptPage(request)) ?? network;
}

async function keptPage(request: Request): Promise<Response | undefined> {
  const cache = await caches.open(CACHE);
  const { origin, pathname } = new URL(request.url);
  const kept = (await cache.match(origin + pathname)) ?? (await cache.match(`${origin}${pathname}/`));
  if (kept !== undefined || worker.navigator.onLine) return kept;
  const missing = await cache.match(addressOf('404.html'));
  return missing && new Response(missing.body, { status: 404, headers: missing.headers });
}

/** A part of a page (script, drawing, picture): the kept copy first. Pictures are kept once they have been seen. */
async function part(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request, { ignoreSearch: true, ignoreVary: true });
  if (kept !== undefined) return kept;
  const response = await fetch(request);
  if (response.ok && request.destination === 'image') {
    // A full phone keeps what it has.
    await cache.put(request, response.clone()).catch(() => undefined);
  }
  return response;
}
