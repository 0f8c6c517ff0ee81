/** Drops every code cache and service worker of this site, and nothing else. */
export async function dropProgram(): Promise<void> {
  if ("serviceWorker" in navigator) {
    for (const registration of await navigator.serviceWorker.getRegistrations()) await registration.unregister();
  }
  if ("caches" in globalThis) {
    for (const name of await caches.keys()) await caches.delete(name);
  }
}
