// Starts the page.
import * as host from "./host.ts";
import * as files from "./files.ts";
import * as offline from "./offline.ts";
import * as signals from "./signals.ts";
import { missingWasm } from "./nowasm.ts";
import { startScreens } from "screens/app.ts";

const missing = missingWasm();
if (missing !== null) signals.core.value = { state: "unavailable", why: missing, reason: "no-wasm" };

startScreens(document.getElementById("app") as HTMLElement);
performance.mark("fields usable");
void host.start();

// The service worker waits until the calculation is there: on a slow line both
// want the same bandwidth.
const stop = signals.core.subscribe(({ state }) => {
  if (state !== "ready" && state !== "unavailable") return;
  queueMicrotask(() => stop());
  void offline.registerOffline();
});

// For the console and for tests.
Object.assign(globalThis, { gaugewright: { host, files, offline, signals } });
