// The host: the only door from the screens to storage and calculation.
//
// Every function returns a promise that always resolves, with an answer whose
// "ok" says whether it worked; a refusal has "code" (see HostCode in
// protocol.ts) and "says", a sentence for people. Requests are carried out in
// the order they are made. What is shown lives in the signals of signals.ts.
//
//   start()                          once, at the start of the page
//   open(doc, as, bytes?)            "new": make it, or take up what is stored
//                                    under this name; "stored": take up;
//                                    "file": bytes from outside (see openFile)
//   openFile(bytes)                  a file from outside, under a name of its own
//   keep(doc)                        store an opened file whose job was known
//   show(doc, view, args?)           a view; never changes anything
//   showTable(doc, view, args, table)  a view of a table that may come in
//   showBytes(doc, view, args)       a view that comes with bytes
//   enter(doc, entry, options?)      the only change; savedAt says it is durable
//   save(doc)                        the file's bytes and its suggested name
//   rawSave(doc)                     the same without the calculation
//   filed(doc, seq)                  the file has safely left (see files.ts)
//   close(doc), forget(doc)          drop from memory; drop from the device
//   dropAside(doc, seq)              an entry set aside is not wanted any more
//   takeOver()                       edit here instead of in the other tab
//   setWho(name), flush(), retryCore()
//
// Times and ids are made here: the core has neither clock nor chance.
import { batch } from "@preact/signals-core";
import { Bridge, type Request } from "./bridge.ts";
import { uuids, uuidv7 } from "./ids.ts";
import { loadCore } from "./loadcore.ts";
import { missingWasm } from "./nowasm.ts";
import { askToPersist } from "./persist.ts";
import type { Event, HostCode, Json, Reply } from "./protocol.ts";
import * as signals from "./signals.ts";
import { sittingOf, endSitting } from "./sittings.ts";
import { TabLock } from "./tablock.ts";

export interface Answer {
  ok: boolean;
  code?: HostCode;
  says?: string;
  [name: string]: Json | undefined;
}

/** What an answer carries beside the core's own words. */
export interface Full<T = Answer> {
  answer: T;
  bytes?: Uint8Array;
  savedAt?: string;
  seq?: number;
  known?: string[];
}

/** The members of one entry beside those the host adds (doc, sitting, at, ids). */
export interface Entry {
  do: string;
  path?: string;
  [name: string]: Json | undefined;
}

/** A table of piles as it came, under a name that no other one has. */
export interface Table {
  name: string;
  bytes: Uint8Array;
}

export interface EnterOptions {
  /** The view to answer with, as for show. */
  show?: { view: string; [name: string]: Json | undefined };
  /** How many ids the entry may need, or those made for it. */
  ids?: number | string[];
  bytes?: Uint8Array;
}

/** Compiled here while the worker is still coming up; every worker gets it. */
const module = missingWasm() === null ? loadCore(import.meta.url).catch(() => null) : Promise.resolve(null);
const bridge = new Bridge(new URL(__WORKER__, import.meta.url), module, { event: heard, started });
const lock = new TabLock((now) => {
  if (edits === now) return;
  edits = now;
  restart();
  publish(() => (signals.readOnly.value = !now));
});
let running = false;
/** Whether this tab is the one that edits. */
let edits = true;

/** Starts everything. The page may be used at once: requests wait in line. */
export async function start(): Promise<void> {
  edits = await lock.take();
  running = true;
  bridge.start(!edits);
  publish(() => (signals.readOnly.value = !edits));
  // A reading tab is out of date as soon as the other one goes on.
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible" && !edits) restart();
    if (document.visibilityState === "hidden") void flush();
  });
  addEventListener("online", () => void retryCore());
}

export async function open(doc: string, as: "new" | "stored" | "file", bytes?: Uint8Array): Promise<Full> {
  const request = text({ verb: "open", doc, as: as === "stored" ? "file" : as, ids: uuids(8) });
  return full(await send({ verb: "open", doc, as, request, ...(bytes ? { bytes } : {}) }));
}

/**
 * Opens a file from outside. If its job is on this device already, the answer
 * carries `known` (names of the documents that hold it) and nothing is stored
 * until `keep`; the opened copy can be shown meanwhile. Its bytes come back, to
 * be put together with one of those: enter(known, {do: "join"}, {bytes}).
 */
export async function openFile(bytes: Uint8Array): Promise<Full & { doc: string; bytes: Uint8Array }> {
  const doc = uuidv7();
  return { ...(await open(doc, "file", bytes)), doc, bytes };
}

export async function keep(doc: string): Promise<Full> {
  return full(await send({ verb: "keep", doc }));
}

/** Views that look at every pile of the job. */
const wholeViews = ["order", "lengths", "cutting"];

export async function show<T = Answer>(doc: string, view: string, args: Record<string, Json> = {}): Promise<T> {
  const reply = await send({ verb: "show", doc, request: text({ verb: "show", doc, view, ...args }), whole: wholeViews.includes(view) });
  return JSON.parse(reply.text) as T;
}

/** A view of a table that has not come in yet. Its bytes go to the worker once, however often it is looked at. */
export async function showTable<T = Answer>(doc: string, view: string, args: Record<string, Json>, table: Table): Promise<T> {
  const request = { verb: "show", doc, request: text({ verb: "show", doc, view, ...args }), whole: true, table: table.name } as const;
  const reply = JSON.parse((await send(request)).text) as Answer;
  if (reply.code !== "no-table") return reply as T;
  return JSON.parse((await send({ ...request, bytes: table.bytes })).text) as T;
}

/** A view with bytes beside it, which may take as long as a save. */
export async function showBytes(doc: string, view: string, args: Record<string, Json>): Promise<Full> {
  return full(await send({ verb: "show", doc, request: text({ verb: "show", doc, view, ...args }), whole: true }));
}

/** Makes one entry. With do:"type" neighbouring key presses on one path become one record; an answer to a question is one by itself. */
export async function enter(doc: string, entry: Entry, options: EnterOptions = {}): Promise<Full> {
  const sitting = sittingOf(doc);
  const { do: verb, ...rest } = entry;
  // What is entered after another copy came in has seen that copy.
  if (verb === "join") endSitting(doc);
  const request = text({
    verb: "enter",
    doc,
    sitting,
    at: new Date().toISOString(),
    do: verb,
    ...rest,
    ids: Array.isArray(options.ids) ? options.ids : uuids(options.ids ?? 4),
  });
  const reply = await send({
    verb: "enter",
    doc,
    request,
    token: uuidv7(),
    ...(options.show ? { show: text(options.show) } : {}),
    ...(verb === "type" && entry.path !== undefined && !("correction" in entry || "renew" in entry) ? { fold: `${sitting.id} ${entry.path}` } : {}),
    ...(options.bytes ? { bytes: options.bytes } : {}),
  });
  if (reply.savedAt !== undefined) askToPersist();
  return full(reply);
}

/** The job file as it is now. What is entered afterwards belongs to a new sitting. */
export async function save(doc: string): Promise<Full> {
  endSitting(doc);
  return full(await send({ verb: "save", doc, request: text({ verb: "save", doc, for: "file", ids: uuids(2) }) }));
}

/** The stored file with the entries not yet in it, made without the calculation. */
export async function rawSave(doc: string): Promise<Full> {
  endSitting(doc);
  return full(await send({ verb: "rawSave", doc }));
}

export async function filed(doc: string, seq: number): Promise<Full> {
  return full(await send({ verb: "filed", doc, seq }));
}

export async function close(doc: string): Promise<Full> {
  endSitting(doc);
  return full(await send({ verb: "close", doc, request: text({ verb: "close", doc }) }));
}

/** Drops a document from this device for good: ask before. */
export async function forget(doc: string): Promise<Full> {
  return full(await send({ verb: "forget", doc }));
}

export async function dropAside(doc: string, seq: number): Promise<Full> {
  return full(await send({ verb: "dropAside", doc, seq }));
}

export async function setWho(who: string): Promise<Full> {
  const before = signals.meta.value;
  if (before) publish(() => (signals.meta.value = { ...before, who }));
  return full(await send({ verb: "setMeta", meta: { who } }));
}

/** Edits here from now on; the tab that has edited so far only reads. */
export function takeOver(): void {
  lock.takeOver();
}

/** Folds the journals into the stored files now. Nothing depends on it for safety. */
export async function flush(): Promise<Full> {
  return full(await send({ verb: "flush" }));
}

/** Tries to start a calculation that was given up. */
export async function retryCore(): Promise<Full> {
  return full(await send({ verb: "retryCore" }));
}

function send(request: Request): Promise<Reply> {
  return bridge.send(request);
}

/** A new worker reads everything anew from the device. */
function restart(): void {
  if (running) bridge.start(!edits);
}

/** Signals run the screens at once; what they throw must not stop the host. */
function publish(change: () => void): void {
  try {
    batch(change);
  } catch (problem) {
    reportError(problem);
  }
}

function heard(event: Event): void {
  if (event.event === "conflict") restart();
  else publish(() => note(event));
}

function note(event: Event): void {
  switch (event.event) {
    case "core":
      if (event.core.state === "ready") performance.mark("core ready");
      if (event.labels !== undefined) signals.lateLabels.value = JSON.parse(event.labels) as Record<string, string>;
      signals.core.value = event.core;
      break;
    case "storage":
      signals.storage.value = event.storage;
      break;
    case "restored":
      signals.restored.value = true;
      break;
    case "aside":
      signals.aside.value = event.aside;
      break;
    case "doc":
      signals.docs.value = new Map(signals.docs.value).set(event.info.doc, event.info);
      break;
    case "forgotten": {
      const docs = new Map(signals.docs.value);
      docs.delete(event.doc);
      signals.docs.value = docs;
      break;
    }
  }
}

function started(start: NonNullable<Reply["start"]>): void {
  publish(() => {
    signals.docs.value = new Map(start.docs.map((info) => [info.doc, info]));
    signals.aside.value = start.aside;
    signals.meta.value = start.meta;
    signals.epoch.value++;
  });
}

function text(request: Record<string, unknown>): string {
  return JSON.stringify(request);
}

function full({ n: _, start: _start, text: words, ...rest }: Reply): Full {
  return { answer: JSON.parse(words) as Answer, ...rest };
}
