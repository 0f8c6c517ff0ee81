// Views of documents, fetched when a screen first reads them and fetched anew
// when the document has changed. Reading one inside a render is enough.
import { batch, signal, type Signal } from "@preact/signals-core";
import * as host from "../host.ts";
import type { Entry, Full } from "../host.ts";
import { core, epoch } from "../signals.ts";
import type { Json } from "../protocol.ts";
import type { Answered } from "./views.ts";

export type Args = Record<string, Json>;

interface Slot {
  value: Signal<Answered | undefined>;
  /** Version of the document that was asked for last. */
  asked: string;
}

const slots = new Map<string, Slot>();
const versions = new Map<string, Signal<number>>();
/** Slots that are kept; those not read for longest go first. */
const most = 60;

/** How long an answer may take before the readings give way to words [ms]. */
const patience = 400;
/** An entry has been under way for longer than that. */
export const slow = signal(false);
let under = 0;
let timer: ReturnType<typeof setTimeout> | undefined;

/** The last refusal of an entry, for the band on top. */
export const refusal = signal("");

/** An entry that would turn the outcome of piles already pressed: it was not made but is asked about. */
export interface Question {
  doc: string;
  entry: Entry;
  show: Show | undefined;
  ids: number | string[] | undefined;
  bytes: Uint8Array | undefined;
  says: string;
  turns: { reason: string; correct: string; correctSays: string; leave: string; renew?: string; renewSays?: string; ids?: number };
}

type Show = { view: string; [name: string]: Json };

/** The last one, until it is answered. */
export const question = signal<Question | null>(null);

/** The view as last answered, undefined before. Tracks: use it inside a render. */
export function view<T extends Answered>(doc: string, name: string, args: Args = {}, table?: host.Table): T | undefined {
  const key = keyOf(doc, name, args, table);
  const now = `${epoch.value}/${version(doc).value}`;
  let slot = slots.get(key);
  if (!slot) {
    slot = { value: signal<Answered | undefined>(undefined), asked: "" };
    if (slots.size >= most) slots.delete(slots.keys().next().value as string);
  }
  slots.delete(key);
  slots.set(key, slot);
  if (slot.asked !== now) {
    slot.asked = now;
    void fetchInto(slot, now, table ? host.showTable<Answered>(doc, name, args, table) : host.show<Answered>(doc, name, args));
  }
  return slot.value.value as T | undefined;
}

/** The same without asking: null where nobody has asked yet. */
export function asked<T extends Answered>(doc: string, name: string, args: Args): T | undefined | null {
  const slot = slots.get(keyOf(doc, name, args));
  return slot && slot.asked === `${epoch.value}/${version(doc).value}` ? (slot.value.value as T | undefined) : null;
}

async function fetchInto(slot: Slot, now: string, asking: Promise<Answered>): Promise<void> {
  const answer = await waited(asking);
  if (slot.asked === now) slot.value.value = answer;
}

/** Asks once, without keeping the answer. */
export function ask<T extends Answered>(doc: string, name: string, args: Args = {}): Promise<T> {
  return waited(host.show<T>(doc, name, args));
}

/** Makes an entry; with `show` the view that comes back is on the screen at once. */
export async function enter(doc: string, entry: Entry, show?: Show, ids?: number | string[], bytes?: Uint8Array): Promise<Full> {
  const full = await waited(host.enter(doc, entry, { ...(show ? { show } : {}), ...(ids === undefined ? {} : { ids }), ...(bytes ? { bytes } : {}) }));
  batch(() => {
    const later = (version(doc).value += 1);
    const seen = full.answer["view"] as unknown as Answered | undefined;
    if (show && seen && typeof seen === "object") {
      const { view: name, ...args } = show;
      const key = keyOf(doc, name, args);
      const slot = slots.get(key);
      if (slot) {
        slot.asked = `${epoch.peek()}/${later}`;
        slot.value.value = { ...seen, ok: true };
      }
    }
    const { says = "", turns, problem } = full.answer as { says?: string; turns?: unknown; problem?: unknown };
    if (turns) {
      const { correction: _, renew: _too, ...bare } = entry;
      question.value = { doc, entry: bare as Entry, show, ids, bytes, says, turns: turns as Question["turns"] };
    } else if (question.value?.doc === doc && question.value.entry.path === entry.path) question.value = null;
    refusal.value = full.answer.ok || full.answer.code === "core-unavailable" || turns || problem ? "" : says;
  });
  return full;
}

/** The document was changed by something else than an entry. */
export function changed(doc: string): void {
  version(doc).value++;
}

/** True while what is shown may not be the newest answer. */
export function uncertain(): boolean {
  return slow.value || core.value.state === "replacing";
}

async function waited<T>(promise: Promise<T>): Promise<T> {
  if (under++ === 0 && core.peek().state === "ready") timer = setTimeout(() => (slow.value = true), patience);
  try {
    return await promise;
  } finally {
    if (--under === 0) {
      clearTimeout(timer);
      slow.value = false;
    }
  }
}

function version(doc: string): Signal<number> {
  let found = versions.get(doc);
  if (!found) versions.set(doc, (found = signal(0)));
  return found;
}

function keyOf(doc: string, name: string, args: Args, table?: host.Table): string {
  return JSON.stringify([doc, name, Object.entries(args).sort(([a], [b]) => (a < b ? -1 : 1)), table?.name ?? ""]);
}
