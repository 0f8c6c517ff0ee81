// State the host shows to the screens. Screens read these signals and never
// write them.
import { signal } from "@preact/signals-core";
import type { Aside, CoreState, DocInfo, Meta, StorageState } from "./protocol.ts";

/** Whether the calculation runs. Results say "starting" until it is ready. */
export const core = signal<CoreState>({ state: "starting" });
/** The words of screens that need a running core, by key; null until one has run. */
export const lateLabels = signal<Readonly<Record<string, string>> | null>(null);
/** What the device's storage does. */
export const storage = signal<StorageState>({ kind: "device", unsaved: 0 });
/** The browser had lost its database at this start; the second copy brought everything back. */
export const restored = signal(false);
/** The documents on this device by name. */
export const docs = signal<ReadonlyMap<string, DocInfo>>(new Map());
/** Entries the calculation failed on twice, kept with their text. */
export const aside = signal<readonly Aside[]>([]);
/** Device and person; null until the worker has started. */
export const meta = signal<Meta | null>(null);
/** Another tab edits: entering is refused here. Ends by itself when that tab closes. */
export const readOnly = signal(false);
/** Counts up when all shown answers may be out of date (worker started anew): show again. */
export const epoch = signal(0);
/** Whether the browser promised to keep this site's storage; null: not asked or not answered. */
export const persisted = signal<boolean | null>(null);
/** The page works without a network from now on. */
export const offlineReady = signal(false);
/** A newer version is there and waits for the user's yes. */
export const updateOffered = signal(false);
/** A newer version has taken over because of another tab: this page is to be reloaded when convenient. */
export const updateTaken = signal(false);
