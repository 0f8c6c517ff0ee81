// A sitting is one opening of one copy of a job. It ends when the job leaves
// in a file: an entry that has left the device is never rewritten.
import { uuidv7 } from "./ids.ts";
import { meta } from "./signals.ts";

export interface Sitting {
  id: string;
  who: string;
  device: string;
  /** ISO time of the beginning. */
  on: string;
}

const sittings = new Map<string, { id: string; on: string }>();

export function sittingOf(doc: string): Sitting {
  let sitting = sittings.get(doc);
  if (!sitting) sittings.set(doc, (sitting = { id: uuidv7(), on: new Date().toISOString() }));
  return { id: sitting.id, who: meta.value?.who ?? "", device: meta.value?.device ?? "", on: sitting.on };
}

export function endSitting(doc: string): void {
  sittings.delete(doc);
}
