// "What if" on one pile of a job. What is tried lives here only: it travels
// with each question, is never entered, and is dropped on leaving. "Use this"
// enters it as one entry.
import { batch, signal } from "@preact/signals-core";
import type { Json } from "../protocol.ts";
import { ask, enter } from "./data.ts";
import { answered, dropAll, sent, typing } from "./fieldstate.ts";
import { back, go, route } from "./route.ts";
import type { Sizing } from "./views.ts";

type Tried = { path: string; typed: string } | { path: string; value: string };

interface Trial {
  doc: string;
  pile: string;
  tried: readonly Tried[];
}

const trial = signal<Trial | null>(null);
const shown = signal<Sizing | undefined>(undefined);
let asked = 0;

/** Whether anything is tried on this pile. */
export function tries(doc: string, pile: string | undefined): readonly Tried[] {
  const now = trial.value;
  return now && now.doc === doc && now.pile === pile ? now.tried : [];
}

/** The same as an argument of a view; nothing when nothing is tried. */
export function trialArgs(doc: string, pile: string | undefined): { trial?: Json } {
  const list = tries(doc, pile);
  return list.length > 0 ? { trial: list as unknown as Json } : {};
}

/** The pile as tried: the last answer, until the next one is there. */
export function triedSizing(doc: string, pile: string): Sizing | undefined {
  return tries(doc, pile).length > 0 ? shown.value : undefined;
}

/** Edit boxes of the trial have drafts of their own. */
export function trialKey(doc: string): string {
  return `trial ${doc}`;
}

export async function tryText(doc: string, pile: string, key: string, path: string, typed: string, entered: string): Promise<void> {
  typing(key, typed);
  sent(key);
  await put(doc, pile, { path, typed: entered });
  answered(key, true, null);
}

/** A choice; the circuit of another rig is no choice any more. */
export async function tryChoice(doc: string, pile: string, path: string, value: string): Promise<void> {
  if (path.endsWith("/rig")) await put(doc, pile, { path: path.replace(/rig$/, "circuit"), value: "" }, { path, value });
  else await put(doc, pile, { path, value });
}

async function put(doc: string, pile: string, ...more: Tried[]): Promise<void> {
  const paths = new Set(more.map(({ path }) => path));
  const tried = [...tries(doc, pile).filter(({ path }) => !paths.has(path)), ...more];
  const turn = ++asked;
  const answer = await ask<Sizing>(doc, "sizing", { pile, tries: true, trial: tried as unknown as Json });
  if (turn !== asked) return;
  batch(() => {
    shown.value = answer;
    trial.value = { doc, pile, tried };
  });
}

/** Tries a pile from another circuit, on the screen for it. */
export async function tryBerth(doc: string, pile: string, rig: string, circuit: string): Promise<void> {
  dropTrial();
  const path = `/now/piles/${pile}`;
  await put(doc, pile, { path: `${path}/rig`, value: rig }, { path: `${path}/circuit`, value: circuit });
  go("size", doc, pile);
}

/** Enters what is tried. A value that cannot be read is refused, and the trial stays. */
export async function useTrial(doc: string, pile: string): Promise<void> {
  const { answer } = await enter(doc, { do: "use", trial: tries(doc, pile) as unknown as Json });
  if (!answer.ok && answer["code"] !== "core-unavailable") return;
  dropTrial();
  back();
}

export function dropTrial(): void {
  const now = trial.peek();
  asked++;
  if (!now) return;
  dropAll(trialKey(now.doc));
  batch(() => {
    trial.value = null;
    shown.value = undefined;
  });
}

/** Leaving the trial, its limits and the workings of its numbers drops it. */
export function watchTrial(): void {
  route.subscribe(([screen, doc, part, pile]) => {
    const now = trial.peek();
    if (!now) return;
    const stays = doc === now.doc && (screen === "size" || screen === "limits" ? part === now.pile : screen === "working" && pile === now.pile);
    if (!stays) dropTrial();
  });
}
