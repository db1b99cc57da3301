import { localDay } from './local-day.ts';
import { GuideCopy } from './offline/guide-copy.ts';
import { NOW_PATH } from './offline/offline-list.ts';
import { pathBelow } from './offline/page-address.ts';
import type { Store, Surroundings } from './offline/surroundings.ts';
import { savesData } from './saves-data.ts';

/**
 * Makes the whole guide readable without a signal after one visit. What is kept and shown is decided in `offline/`; this
 * file gives it the browser's store and network. The build puts `OFFLINE` in front.
 */
declare const OFFLINE: { readonly base: string };

const worker = self as unknown as ServiceWorkerGlobalScope;
/** Guides on one origin keep apart by their base; the space ends it, so that `/` is no part of `/guide/`. */
const PREFIX = `peg-atlas ${OFFLINE.base} `;
const CACHE = `${PREFIX}kept`;
/** What the copy asks of the worker under these addresses is no file of the guide. */
const KEPT = `${OFFLINE.base}.kept/`;
const STANDING_PATH = 'standing.json';

const copy = new GuideCopy(surroundings(), OFFLINE.base);

worker.addEventListener('install', (event) => event.waitUntil(worker.skipWaiting()));
worker.addEventListener('activate', (event) => event.waitUntil(takeOver()));
worker.addEventListener('message', (event) =>
  event.waitUntil(event.data === 'keep-all' ? keepAll() : catchUp(pathOf(event.source), event.data?.seen)),
);
worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== worker.location.origin) return;
  const path = pathBelow(OFFLINE.base, url.pathname);
  if (path === null) return;
  if (request.mode === 'navigate') event.respondWith(page(path, request, event));
  else if (path === STANDING_PATH) event.respondWith(standing(url.searchParams));
  else event.respondWith(assetResponse(path, request));
});

/** Caches of this guide under other names are of an earlier worker, which did not hold files against their digests. */
async function takeOver(): Promise<void> {
  for (const name of await caches.keys()) {
    if (name.startsWith(PREFIX) && name !== CACHE) await caches.delete(name);
  }
  await worker.clients.claim();
}

/** Fetches what is missing, then tells the pages that are open; keeps the pictures that a page showed before the worker was there. */
async function catchUp(page: string | null, seen: readonly string[] = []): Promise<void> {
  await copy.isChecked();
  await copy.catchUp(page);
  tell();
  for (const address of seen) {
    const { origin, pathname } = new URL(address);
    const path = origin === worker.location.origin ? pathBelow(OFFLINE.base, pathname) : null;
    if (path !== null && (await copy.part(path)) === null) await seePicture(path, await fetch(address));
  }
}

async function seePicture(path: string, response: Response): Promise<void> {
  if (!response.ok) return;
  await copy.keepSeen(path, new Uint8Array(await response.arrayBuffer())).catch(() => undefined);
}

/** The page that sent a message, below the guide's base. */
function pathOf(source: ExtendableMessageEvent['source']): string | null {
  return source instanceof WindowClient ? pathBelow(OFFLINE.base, new URL(source.url).pathname) : null;
}

async function keepAll(): Promise<void> {
  await copy.isChecked();
  await copy.keepAll();
  tell();
}

function tell(): void {
  void worker.clients.matchAll().then((clients) => {
    for (const client of clients) client.postMessage('news');
  });
}

async function page(path: string, request: Request, event: FetchEvent): Promise<Response> {
  const shown = await copy.page(path);
  event.waitUntil(copy.use(path).catch(() => undefined));
  if (shown === null) return fetch(request);
  return new Response(shown.html, { status: shown.status, headers: { 'content-type': typeOf('.html') } });
}

/** What an open page asks: how things stand by now. The host has a moment to answer, then what is known is told. */
async function standing(asked: URLSearchParams): Promise<Response> {
  const patience = new Promise<false>((resolve) => setTimeout(() => resolve(false), 4000));
  const isChecked = await Promise.race([copy.isChecked(), patience]);
  return Response.json(await copy.state(asked.get('path') ?? '', asked.get('page'), isChecked));
}

/** A part of a page (script, drawing, picture): the kept copy first. Pictures are kept once they were seen. */
async function assetResponse(path: string, request: Request): Promise<Response> {
  const kept = path === NOW_PATH ? null : await copy.part(path);
  if (kept !== null) return new Response(kept as BodyInit, { headers: { 'content-type': typeOf(path) } });
  const response = await fetch(request);
  if (request.destination === 'image') await seePicture(path, response.clone());
  return response;
}

function surroundings(): Surroundings {
  return {
    store: cacheStore(),
    async ask(path, past) {
      const address = new URL(OFFLINE.base + path, worker.location.origin);
      // Caches on the way tell addresses apart by what stands behind the question mark; hosts of files do not read it.
      if (past === 'everything') address.searchParams.set('at', String(Date.now()));
      try {
        const answer = await fetch(address, { cache: past === 'everything' ? 'no-store' : 'no-cache' });
        return { status: answer.status, bytes: new Uint8Array(await answer.arrayBuffer()) };
      } catch {
        return null;
      }
    },
    wait: (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds)),
    today: () => localDay(new Date()),
    time: () => Date.now(),
    tell,
    savesData: () => savesData(worker.navigator),
  };
}

/** A cache as a store of files by name. */
function cacheStore(): Store {
  const addressOf = (name: string) => new URL(KEPT + name, worker.location.origin).href;
  const prefix = addressOf('');
  const opened = () => caches.open(CACHE);
  return {
    async read(name) {
      const kept = await (await opened()).match(addressOf(name));
      return kept && new Uint8Array(await kept.arrayBuffer());
    },
    async write(name, bytes) {
      await (await opened()).put(addressOf(name), new Response(bytes as BodyInit));
    },
    async remove(name) {
      await (await opened()).delete(addressOf(name));
    },
    async names() {
      const kept = await (await opened()).keys();
      return kept.map(({ url }) => url.slice(prefix.length));
    },
  };
}

const TYPES: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  css: 'text/css; charset=utf-8',
  json: 'application/json',
  geojson: 'application/geo+json',
  csv: 'text/csv; charset=utf-8',
  ics: 'text/calendar; charset=utf-8',
  xml: 'application/atom+xml; charset=utf-8',
  svg: 'image/svg+xml',
  png: 'image/png',
  jpg: 'image/jpeg',
  jpeg: 'image/jpeg',
  webp: 'image/webp',
  avif: 'image/avif',
  gif: 'image/gif',
};

/** A kept file's type goes by its name: what a host called it does not count. */
function typeOf(path: string): string {
  return TYPES[path.slice(path.lastIndexOf('.') + 1).toLowerCase()] ?? 'application/octet-stream';
}
