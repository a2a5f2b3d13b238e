import { PrecacheController } from 'workbox-precaching/PrecacheController.js';

/*
 * Carries the app offline, one whole build at a time.
 *
 * Each build has a cache of its own, filled whole at install or not at all. Which build the pages
 * get is a note in a cache, the build in use, and only a person's word changes it: every version of
 * this worker serves the build in use. Waiting alone would not do. A browser activates a waiting
 * worker as soon as the last window is gone, so a kill in the middle of an outing would bring it
 * back on another version of the app.
 *
 * The word is followed without skipWaiting: the worker before serves the new build as well, and a
 * worker that changes in the middle of a navigation left the page hanging (seen in Chromium 156).
 *
 * No IndexedDB here: a worker that holds the database open can stall the page that needs it.
 */

declare const self: ServiceWorkerGlobalScope;
/** A hash over the list of files, put in by the build. */
declare const BUILD: string;

/** A build that lies in a cache: the cache's name and the addresses of all its files. */
interface CachedBuild {
  readonly cache: string;
  readonly files: readonly string[];
}

const scope = self.registration.scope;
const indexPage = new URL('index.html', scope).href;
const noteCache = 'in-use';
const noteAddress = new URL('in-use', scope).href;

const files = self.__WB_MANIFEST;
const controller = new PrecacheController({ cacheName: `build-${BUILD}` });
// Fails the install, and so keeps the build before, if a single file is not to be had.
controller.precache(files);

const ownBuild: CachedBuild = {
  cache: controller.strategy.cacheName,
  files: [...controller.getURLsToCacheKeys().keys()],
};

async function buildInUse(): Promise<CachedBuild> {
  const note = await (await caches.open(noteCache)).match(noteAddress);
  return note === undefined ? ownBuild : ((await note.json()) as CachedBuild);
}

async function use(build: CachedBuild): Promise<void> {
  await (await caches.open(noteCache)).put(noteAddress, Response.json(build));
}

function find(build: CachedBuild, address: string): Promise<Response | undefined> {
  return caches.match(address, { cacheName: build.cache, ignoreSearch: true });
}

/** Lets go of the builds before. A worker becomes active only when no window of theirs is left. */
async function forgetOldBuilds(): Promise<void> {
  const kept = [noteCache, ownBuild.cache, (await buildInUse()).cache];
  const names = await caches.keys();
  await Promise.all(
    names.filter((name) => !kept.includes(name)).map((name) => caches.delete(name)),
  );
}

self.addEventListener('activate', (event) => {
  const start = async () => {
    const inUse = await buildInUse();
    await use((await caches.has(inUse.cache)) ? inUse : ownBuild);
    await forgetOldBuilds();
    // The first visit is served from the cache too, so that its later parts are there offline.
    await self.clients.claim();
  };
  event.waitUntil(start());
});

/** Takes the newest build that is here whole, from this worker or the one that waits behind it. */
async function useNewest(): Promise<void> {
  const waiting = self.registration.waiting;
  if (waiting === null) return use(ownBuild);
  await new Promise<void>((taken) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = () => taken();
    waiting.postMessage({ type: 'take-over' }, [channel.port2]);
  });
}

async function answerFetch(request: Request): Promise<Response> {
  const { pathname, search } = new URL(request.url);
  const opensApp = request.mode === 'navigate' && pathname === new URL(scope).pathname;
  if (opensApp && search === '?newest') {
    await useNewest();
    return Response.redirect(scope);
  }
  const address = opensApp ? indexPage : request.url;
  return (
    (await find(await buildInUse(), address)) ??
    // A window of the build before an update asks for a later part.
    (address.includes('/assets/') ? await caches.match(address) : undefined) ??
    fetch(request)
  );
}

self.addEventListener('fetch', (event) => {
  if (event.request.method === 'GET' && event.request.url.startsWith(scope)) {
    event.respondWith(answerFetch(event.request));
  }
});

/** Fetches a file of this worker's build that the browser threw away; fails on any other content. */
async function bringBack(address: string): Promise<void> {
  const key = controller.getCacheKeyForURL(address) ?? address;
  const integrity = controller.getIntegrityForCacheKey(key) ?? '';
  const response = await fetch(new Request(address, { integrity, cache: 'reload' }));
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  // A copy, because a page can't be opened from a response that came by a redirect.
  const copy = new Response(await response.blob(), { headers: response.headers });
  await (await caches.open(ownBuild.cache)).put(key, copy);
}

/** Counts the files of the build in use that are really there. */
async function countCached(): Promise<{ present: number; expected: number }> {
  const build = await buildInUse();
  const found = await Promise.all(build.files.map((address) => find(build, address)));
  const missing = build.files.filter((_, at) => found[at] === undefined);
  // The server has only the newest build: files of an older one can't be fetched again.
  const canFetch = build.cache === ownBuild.cache;
  const tries = await Promise.allSettled(
    missing.map((address) => (canFetch ? bringBack(address) : Promise.reject(address))),
  );
  const broughtBack = tries.filter(({ status }) => status === 'fulfilled').length;
  return {
    present: build.files.length - missing.length + broughtBack,
    expected: build.files.length,
  };
}

async function answerMessage(type: unknown): Promise<unknown> {
  switch (type) {
    case 'count-cached':
      return countCached();
    case 'is-newer':
      return (await buildInUse()).cache !== ownBuild.cache;
    case 'take-over':
      await use(ownBuild);
      return true;
    default:
      return undefined;
  }
}

self.addEventListener('message', (event) => {
  const { type } = event.data as { type?: unknown };
  const answered = answerMessage(type)
    // An asker that gets no answer would wait for ever.
    .catch((error: unknown) => ({ failed: String(error) }))
    .then((answer) => event.ports[0]?.postMessage(answer));
  event.waitUntil(answered);
});
