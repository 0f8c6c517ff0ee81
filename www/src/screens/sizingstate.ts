// Which sizing is on the first screen. The last one is offered, never assumed:
// until it is taken up there is no document, and a first key starts a new one.
import { batch, computed, signal } from "@preact/signals-core";
import * as host from "../host.ts";
import { uuidv7 } from "../ids.ts";
import type { DocInfo } from "../protocol.ts";
import { docs, meta } from "../signals.ts";
import { ask, enter } from "./data.ts";
import { draftOf, drop, takeAll, typing } from "./fieldstate.ts";
import { isSizing, type Info, type Sizing } from "./views.ts";

/** The sizing under work; null while nothing is taken up. */
export const current = signal<string | null>(null);
/** The last sizing, with its one line. */
export const offered = signal<{ doc: string; last: string } | null>(null);
/** The core has answered what there is. */
export const looked = signal(false);

export const shelf = "shelf";
const first = "sizing";

/** Documents with something in them, newest first; the shelf is none. */
export const kept = computed(() =>
  [...docs.value.values()]
    .filter((info) => info.doc !== shelf && (info.changedAt !== null || info.filedAt !== null))
    .sort((a, b) => (touched(a) < touched(b) ? 1 : -1)),
);

function touched(info: DocInfo): string {
  return info.changedAt ?? info.savedAt ?? "";
}

/** Nothing is kept on this device yet. */
export const cold = computed(() => meta.value === null || kept.value.length === 0);

/** Looks for the last sizing. A blank one is simply gone on with. */
export async function lookForLast(): Promise<void> {
  if (looking) return;
  looking = true;
  await look().finally(() => (looking = false));
}

let looking = false;

async function look(): Promise<void> {
  await host.open(shelf, "new");
  const opened = await host.open(first, "new");
  // Beside a tab that edits nothing is made, but what there is can be read.
  if (!opened.answer.ok && opened.answer.code !== "read-only") {
    looked.value = true;
    return;
  }
  for (const { doc } of kept.peek().slice(0, 8)) {
    const info = await ask<Info>(doc, "info");
    if (!info.ok || !isSizing(info)) continue;
    const sizing = await ask<Sizing>(doc, "sizing");
    if (!sizing.ok) continue;
    if (current.peek() !== null) break;
    if (sizing.blank) current.value = doc;
    else offered.value = { doc, last: sizing.last };
    break;
  }
  if (current.peek() === null && offered.peek() === null && opened.answer.ok) current.value = first;
  looked.value = true;
  if (current.peek() === null && typedEarly) await begin();
  else if (current.peek() !== null && typedEarly) await moveTyped(current.peek() as string);
}

export function takeUp(): void {
  const last = offered.peek();
  if (!last) return;
  batch(() => {
    current.value = last.doc;
    offered.value = null;
  });
}

/** A document of any kind becomes the sizing under work. */
export function workOn(doc: string): void {
  batch(() => {
    current.value = doc;
    offered.value = null;
  });
}

let beginning: Promise<string> | null = null;

/** The document to work on; starts a new one while none is taken up. */
export function begin(): Promise<string> {
  const now = current.peek();
  if (now !== null) return Promise.resolve(now);
  return (beginning ??= beginNew().finally(() => (beginning = null)));
}

export async function startNew(): Promise<string> {
  batch(() => {
    current.value = null;
    offered.value = null;
  });
  return begin();
}

async function beginNew(): Promise<string> {
  const doc = uuidv7();
  await host.open(doc, "new");
  batch(() => {
    current.value = doc;
    offered.value = null;
  });
  await moveTyped(doc);
  return doc;
}

/** Keys pressed before there was a document are kept under this name. */
export const early = "early ";

let typedEarly = false;

export function typeEarly(row: string, typed: string): void {
  typedEarly = true;
  typing(early + row, typed);
  // The document may have come while this key was pressed: what is typed follows it.
  if (looked.peek()) void begin().then(moveTyped);
}

/** Enters what was typed before the document was there. */
async function moveTyped(doc: string): Promise<void> {
  const sizing = await ask<Sizing>(doc, "sizing");
  if (!sizing.ok) return;
  const moved: { row: string; path: string; typed: string }[] = [];
  // In one step, so that no box is drawn without its text.
  batch(() => {
    for (const [row, typed] of takeAll(early)) {
      const path = sizing.rows.find((one) => one.id === row)?.field?.path;
      if (path === undefined) continue;
      typing(`${doc} ${path}`, typed);
      moved.push({ row, path, typed });
    }
  });
  for (const { row, path, typed } of moved) {
    // What was typed on since then has been entered already, and is newer.
    if (draftOf(`${doc} ${path}`)?.typed !== typed) continue;
    await enter(doc, { do: "type", path, typed }, { view: "sizing" });
    if (document.activeElement?.id !== `row-${row}`) drop(`${doc} ${path}`);
  }
}
