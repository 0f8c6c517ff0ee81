// The service worker: one cache a version, filled completely or not at all, so
// that files of two versions never meet. It never touches IndexedDB.
const sw = self as unknown as ServiceWorkerGlobalScope;

const cachePrefix = "gaugewright-";
const cacheName = cachePrefix + __VERSION__;

/** A page of the version before may still be open and start its worker anew. */
const cachesKept = 2;

sw.addEventListener("install", (event) => {
  event.waitUntil(precache());
});

async function precache(): Promise<void> {
  const cache = await caches.open(cacheName);
  try {
    // A file with its hash in the name may come out of the browser's cache;
    // for all others the server is asked.
    await cache.addAll(
      __PRECACHE__.map((path) => new Request(path, { cache: path.startsWith("a/") ? "default" : "no-cache" })),
    );
  } catch (problem) {
    await caches.delete(cacheName);
    throw problem;
  }
}

sw.addEventListener("activate", (event) => {
  event.waitUntil(
    (async () => {
      const names = (await caches.keys()).filter((name) => name.startsWith(cachePrefix) && name !== cacheName);
      for (const name of names.slice(0, Math.max(0, names.length - (cachesKept - 1)))) await caches.delete(name);
      await sw.clients.claim();
    })(),
  );
});

// Only the user's yes makes a new version take over.
sw.addEventListener("message", (event) => {
  if (event.data === "take-over") void sw.skipWaiting();
});

sw.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET") return;
  const path = pathInScope(request.url);
  if (path === null || path === "version.json" || path.startsWith("reset")) return;
  event.respondWith(answer(path, request));
});

async function answer(path: string, request: Request): Promise<Response> {
  const cache = await caches.open(cacheName);
  const page = path === "" || path === "index.html";
  const found = await cache.match(page ? new URL("./", sw.registration.scope).href : request.url);
  if (found) return found;
  // A page of the version before asks for its own files.
  if (path.startsWith("a/")) {
    const older = await caches.match(request.url);
    if (older) return older;
  }
  return fetch(request);
}

/** The path below the scope without query, or null for an address outside. */
function pathInScope(address: string): string | null {
  const scope = new URL(sw.registration.scope);
  const url = new URL(address);
  if (url.origin !== scope.origin || !url.pathname.startsWith(scope.pathname)) return null;
  return url.pathname.slice(scope.pathname.length);
}
