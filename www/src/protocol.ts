// The one file of types for the bridge between page and worker. Both sides
// import it; neither adds fields of its own.
//
//   page -> worker   ToWorker   {n, verb, ...}
//   worker -> page   Reply      {n, text, ...}   one for each request
//                    Event      {event, ...}     whenever something changes
//
// Requests to the core travel as JSON text, made once by the page and never
// read by the worker: what is journalled is letter by letter what the core is
// called with. No engineering number is ever a JavaScript number.

/** JSON as it stands in requests and answers. */
export type Json = string | number | boolean | null | Json[] | { [name: string]: Json | undefined };

/** A request number, unique within one page. */
export type RequestNumber = number;

// ---- page to worker -------------------------------------------------------

/** The call that was running when the page gave up on a silent worker. */
export interface Suspect {
  doc: string;
  /** Journal number of the record; 0 is the opening of the document itself. */
  seq: number;
}

export type ToWorker = { n: RequestNumber } & (
  | {
      verb: "start";
      /** Another tab edits: write nothing. */
      readOnly: boolean;
      suspect: Suspect | null;
      /** Starts in a row after which the core never became ready. */
      failedStarts: number;
      /** False after the core fell silent over a snapshot: the journal alone then keeps the work. */
      snapshots: boolean;
      /** What lived in memory only, from the worker before this one. */
      rows: Row[] | null;
    }
  /** The core as compiled by the page; null when that failed. Not answered. */
  | { verb: "module"; module: WebAssembly.Module | null }
  | {
      verb: "open";
      doc: string;
      /** "new" and "stored" take up what is stored under this name; "new" makes the document if nothing is. */
      as: "new" | "file" | "stored";
      request: string;
      bytes?: Uint8Array;
    }
  | {
      verb: "enter";
      doc: string;
      request: string;
      /** The view wanted with the answer, JSON text; never journalled. */
      show?: string;
      /** Neighbouring entries with the same key take one journal record. */
      fold?: string;
      /** Names the entry over a restart of the worker, so that it is not made twice. */
      token: string;
      bytes?: Uint8Array;
    }
  | {
      verb: "show";
      doc: string;
      request: string;
      /** It may take as long as a call that reads or writes a whole document. */
      whole?: boolean;
      /** The table that is looked at: the worker keeps the last one, so its bytes come once. */
      table?: string;
      bytes?: Uint8Array;
    }
  | { verb: "save"; doc: string; request: string }
  | { verb: "filed"; doc: string; seq: number }
  | { verb: "keep"; doc: string }
  | { verb: "close"; doc: string; request: string }
  | { verb: "forget"; doc: string }
  | { verb: "rawSave"; doc: string }
  | { verb: "flush" }
  | { verb: "retryCore" }
  | { verb: "dropAside"; doc: string; seq: number }
  | { verb: "setMeta"; meta: Partial<Meta> }
);

// ---- worker to page -------------------------------------------------------

export interface Reply {
  n: RequestNumber;
  /** The core's answer as JSON text, or the worker's own in the same form. */
  text: string;
  bytes?: Uint8Array;
  /** ISO time at which the entry was durable on this device; absent when it is in memory only. */
  savedAt?: string;
  /** `save`: the last journal number contained in the bytes. */
  seq?: number;
  /** `open` of a file: documents on this device that hold the same job. Nothing is stored until `keep`. */
  known?: string[];
  /** `start` */
  start?: { docs: DocInfo[]; aside: Aside[]; meta: Meta };
}

/** Why a request was refused by the host itself (in the answer as "code"). */
export type HostCode =
  | "read-only" // another tab edits
  | "no-table" // the worker does not hold this table (any more): send its bytes
  | "no-document" // nothing is stored or open under this name
  | "core-unavailable" // no WebAssembly, or the core does not start
  | "set-aside" // the core failed twice on this entry; it is kept aside
  | "core-failed" // the core failed on this request, nothing was changed
  | "conflict" // another tab has written this job in between
  | "broken"; // the core failed twice on opening this document

export type Event =
  | { event: "doc"; info: DocInfo }
  | { event: "forgotten"; doc: string }
  | { event: "aside"; aside: Aside[] }
  | { event: "storage"; storage: StorageState }
  /** The browser's database was found empty; everything was brought back from the second copy. */
  | { event: "restored" }
  /** With the first words of a core that runs: those of screens that need one. */
  | { event: "core"; core: CoreState; labels?: string }
  /** Right before a call that cannot be interrupted. */
  | ({ event: "calling" } & Calling)
  | { event: "called" }
  /** Storage is memory only: the page keeps these for the next worker. */
  | { event: "rows"; ops: Op[] }
  /** Another tab has written the document; the worker has to be started anew. */
  | { event: "conflict"; doc: string };

/** What the watchdog has to know about a call. */
export interface Calling {
  /** Who is to blame if it never comes back: the core's start, a journal record or the opening of a stored document (suspect), a request (n), a snapshot. */
  what: "start" | "record" | "request" | "snapshot";
  n?: RequestNumber;
  suspect?: Suspect;
  /** How long it may take [ms]. */
  limit: number;
}

/** What the page may say about the device's storage; always true. */
export interface StorageState {
  /** "waiting": the device's storage has not answered yet, and is asked again. */
  kind: "device" | "memory" | "waiting";
  /** Entries that are in memory only although the device has storage. */
  unsaved: number;
  /** Why, in words, when kind is not "device" or unsaved is above 0. */
  why?: string;
}

export type CoreState =
  | { state: "starting" }
  | { state: "ready" }
  | { state: "replacing"; why: string }
  | { state: "unavailable"; why: string; reason: "no-wasm" | "start" | "failing" };

/** A document on this device, as lists and status lines need it. */
export interface DocInfo {
  doc: string;
  /** The job id inside the file. */
  job: string;
  title: string;
  /** ISO times, null before the first. */
  changedAt: string | null;
  savedAt: string | null;
  filedAt: string | null;
  /** Time of the first change that is in no file, null when every change is in one. */
  unfiledSince: string | null;
  changesSinceFile: number;
  /** In words, when the core fails on opening it; its file can still be saved. */
  broken: string | null;
}

/** An entry the core failed on twice. It is kept with its text until dropped by hand. */
export interface Aside {
  doc: string;
  seq: number;
  request: string;
  token: string;
  why: string;
  at: string;
}

export interface Meta {
  /** UUIDv7 of this device, made at the first start. */
  device: string;
  /** Who works here; "" until told. */
  who: string;
}

// ---- storage rows ---------------------------------------------------------

/** One document, without its bytes: written with every entry, so it is small. */
export interface DocRow extends Omit<DocInfo, "doc"> {
  doc: string;
  /** Grows with every write: compare and set. */
  rev: number;
  /** The worker that wrote it last. */
  by: string;
  /** Last journal number given out. */
  lastSeq: number;
  /** Last journal number contained in the bytes. */
  upTo: number;
  /** Failed openings. */
  tries: number;
}

export interface BytesRow {
  doc: string;
  bytes: Uint8Array;
  /** The `open` request these bytes are opened with. */
  open: string;
}

export interface JournalRow {
  doc: string;
  seq: number;
  request: string;
  token: string;
  fold: string | null;
  bytes: Uint8Array | null;
  tries: number;
  at: string;
}

export interface MetaRow extends Meta {
  name: "device";
}

export interface Rows {
  docs: DocRow;
  bytes: BytesRow;
  journal: JournalRow;
  aside: Aside;
  meta: MetaRow;
}

export type StoreName = keyof Rows;
export type Row = { [S in StoreName]: { store: S; row: Rows[S] } }[StoreName];
export type Key = string | [string, number];

/** One step of a transaction. */
export type Op = ({ op: "put" } & Row) | { op: "delete"; store: StoreName; key: Key };

export function keyOf(store: StoreName, row: Rows[StoreName]): Key {
  if (store === "meta") return (row as MetaRow).name;
  if (store === "journal" || store === "aside") {
    const { doc, seq } = row as JournalRow | Aside;
    return [doc, seq];
  }
  return (row as DocRow | BytesRow).doc;
}
