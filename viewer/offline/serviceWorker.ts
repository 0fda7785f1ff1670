/**
 * Keeps the built page in the browser's cache, so that it opens without a network. The build puts the list of all its
 * files in; a new build is a new version, which waits until the page asks for it or is no longer open anywhere.
 */

interface LifeEvent extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface RequestEvent extends LifeEvent {
  readonly request: Request;
  respondWith(response: Promise<Response>): void;
}
interface WorkerScope {
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listener: (event: LifeEvent) => void): void;
  addEventListener(type: 'fetch', listener: (event: RequestEvent) => void): void;
  addEventListener(type: 'message', listener: (event: MessageEvent) => void): void;
}

/** Put in by precachePlugin.ts. */
declare const __PRECACHE__: { readonly version: string; readonly files: readonly string[] };

const worker = self as unknown as WorkerScope;
const { version, files } = __PRECACHE__;
const { scope } = worker.registration;
/** Other copies of the page on the same server have caches of their own. */
const PREFIX = `evenfall ${scope} `;
const CACHE = PREFIX + version;
const PAGE = new URL('index.html', scope).href;

/** Puts a file into the cache. A redirected answer may not open a page later, so it is kept as a plain one. */
async function store(cache: Cache, file: string): Promise<void> {
  const address = new URL(file, scope).href;
  const response = await fetch(address, { cache: 'no-cache' });
  if (!response.ok) throw new Error(`${file}: expected the file; the server answered ${response.status}`);
  await cache.put(address, response.redirected ? new Response(response.body, { headers: response.headers }) : response);
}

/** One file after the other: the page that asked for this is at work. */
async function install(): Promise<void> {
  const cache = await caches.open(CACHE);
  for (const file of files) await store(cache, file);
}

/** Drops old versions but the last one: a page that is still open may yet ask for a part of it. */
async function activate(): Promise<void> {
  const old = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(old.slice(0, -1).map(async (name) => caches.delete(name)));
  await worker.clients.claim();
}

/** The address without query and fragment; the folder means its page. */
function plainAddress(address: string): string {
  const { origin, pathname } = new URL(address);
  return origin + pathname === scope ? PAGE : origin + pathname;
}

async function answer(request: Request, address: string): Promise<Response> {
  const present = await (await caches.open(CACHE)).match(address);
  if (present) return present;
  for (const name of await caches.keys()) {
    const old = name.startsWith(PREFIX) ? await (await caches.open(name)).match(address) : undefined;
    if (old) return old;
  }
  return fetch(request);
}

worker.addEventListener('install', (event) => event.waitUntil(install()));
worker.addEventListener('activate', (event) => event.waitUntil(activate()));
worker.addEventListener('message', ({ data }) => {
  if (data === 'take over') void worker.skipWaiting();
});
worker.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || !request.url.startsWith(scope)) return;
  event.respondWith(answer(request, plainAddress(request.url)));
});
