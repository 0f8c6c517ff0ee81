// Starts the page.
import * as host from "./host.ts";
import * as files from "./files.ts";
import * as offline from "./offline.ts";
import * as signals from "./signals.ts";
import { missingWasm } from "./nowasm.ts";
import { startScreens } from "screens/app.ts";

const missing = missingWasm();
if (missing !== null) signals.core.value = { state: "unavailable", why: missing, reason: "no-wasm" };

// The page that came with the HTML is painted before the screens take it over:
// it is the same page, and its fields work already.
afterPaint(() => {
  startScreens(document.getElementById("app") as HTMLElement);
  performance.mark("fields usable");
});
void host.start();

/** A hidden page paints nothing and is not waited for; neither is one that paints late. */
function afterPaint(run: () => void): void {
  let ran = false;
  const once = () => {
    if (!ran) run();
    ran = true;
  };
  if (document.hidden) return once();
  requestAnimationFrame(() => setTimeout(once));
  setTimeout(once, 500);
}

// The service worker waits until the calculation is there: on a slow line both
// want the same bandwidth.
const stop = signals.core.subscribe(({ state }) => {
  if (state !== "ready" && state !== "unavailable") return;
  queueMicrotask(() => stop());
  void offline.registerOffline();
});

// For the console and for tests.
Object.assign(globalThis, { gaugewright: { host, files, offline, signals } });
