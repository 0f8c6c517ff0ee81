// What is in the edit boxes while a person types. The box shows what was typed
// until the person leaves it, whatever the core makes of it.
import { signal } from "@preact/signals-core";
import type { Problem } from "./views.ts";

interface Draft {
  typed: string;
  /** What stood in the box before: an entry that is asked about leaves that. */
  from: string | undefined;
  /** Entries not yet answered. */
  waiting: number;
  left: boolean;
  problem: Problem | null;
}

const drafts = signal<ReadonlyMap<string, Draft>>(new Map());

export function draftOf(key: string): Draft | undefined {
  return drafts.value.get(key);
}

/** A key was pressed: the box now holds `typed`; `from` stood in it before. */
export function typing(key: string, typed: string, from?: string): void {
  const before = drafts.peek().get(key);
  set(key, { typed, from: before ? before.from : from, waiting: before?.waiting ?? 0, left: false, problem: before?.problem ?? null });
}

/** An entry for this box is under way. */
export function sent(key: string): void {
  const draft = drafts.peek().get(key);
  if (draft) set(key, { ...draft, waiting: draft.waiting + 1 });
}

/** An entry was answered. A refused one leaves the text in the box. */
export function answered(key: string, taken: boolean, problem: Problem | null): void {
  const draft = drafts.peek().get(key);
  if (!draft) return;
  const next = { ...draft, waiting: draft.waiting - 1, problem };
  if (next.left && taken && next.waiting <= 0) drop(key);
  else set(key, next);
}

/** The person has left the box: from now on it shows the stored text. */
export function left(key: string): void {
  const draft = drafts.peek().get(key);
  if (!draft) return;
  if (draft.waiting <= 0 && draft.problem === null) drop(key);
  else set(key, { ...draft, left: true });
}

export function drop(key: string): void {
  const next = new Map(drafts.peek());
  next.delete(key);
  drafts.value = next;
}

/** Units chosen for boxes whose text has none, kept while the box is blank. */
const units = signal<ReadonlyMap<string, string>>(new Map());

export function unitChosen(key: string): string | undefined {
  return units.value.get(key);
}

export function chooseUnit(key: string, unit: string | undefined): void {
  const next = new Map(units.peek());
  if (unit === undefined) next.delete(key);
  else next.set(key, unit);
  units.value = next;
}

/** Drops every draft whose key starts with `prefix`. */
export function dropAll(prefix: string): void {
  takeAll(prefix);
}

/** Drafts whose keys start with `prefix`, taken out. */
export function takeAll(prefix: string): [string, string][] {
  const taken: [string, string][] = [];
  for (const [key, draft] of drafts.peek()) {
    if (!key.startsWith(prefix)) continue;
    taken.push([key.slice(prefix.length), draft.typed]);
    drop(key);
  }
  return taken;
}

function set(key: string, draft: Draft): void {
  drafts.value = new Map(drafts.peek()).set(key, draft);
}
