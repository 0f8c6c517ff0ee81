// Working without a network: registers the service worker, says when
// everything is stored, and offers an update. An update is never forced.
import { flush } from "./host.ts";
import { offlineReady, updateOffered, updateTaken } from "./signals.ts";

/** Asking for a newer version more often than this is of no use [ms]. */
const askEvery = 60 * 60 * 1000;

let registration: ServiceWorkerRegistration | null = null;
let taking = false;

/** Registers once the page has what it needs, so as not to compete for the line. */
export async function registerOffline(): Promise<void> {
  if (!("serviceWorker" in navigator)) return;
  const hadController = navigator.serviceWorker.controller !== null;
  navigator.serviceWorker.addEventListener("controllerchange", () => {
    if (taking) location.reload();
    else if (hadController) updateTaken.value = true;
  });
  try {
    registration = await navigator.serviceWorker.register("sw.js", { updateViaCache: "none" });
  } catch {
    // Private windows and old hosts: the page works, only not offline.
    return;
  }
  if (registration.active) offlineReady.value = true;
  if (registration.waiting && registration.active) updateOffered.value = true;
  follow(registration.installing);
  registration.addEventListener("updatefound", () => follow(registration?.installing ?? null));
  let asked = Date.now();
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState !== "visible" || Date.now() - asked < askEvery) return;
    asked = Date.now();
    void askForUpdate();
  });
}

/** Looks for a newer version now. */
export async function askForUpdate(): Promise<void> {
  await registration?.update().catch(() => {});
}

/** An installing worker is not yet an update; only an installed one that waits is. */
function follow(worker: ServiceWorker | null): void {
  worker?.addEventListener("statechange", () => {
    if (worker.state === "installed" && registration?.active) updateOffered.value = true;
    if (worker.state === "activated") offlineReady.value = true;
  });
}

/** The user's yes: everything is written down, then the new version takes over and the page reloads. */
export async function takeUpdate(): Promise<void> {
  if (!registration?.waiting) return;
  await flush();
  taking = true;
  registration.waiting.postMessage("take-over");
}
