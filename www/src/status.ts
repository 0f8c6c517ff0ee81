// The status line under every screen. It says only what is true at the moment,
// and the worst thing first.
import { docs, readOnly, storage } from "./signals.ts";

export interface Status {
  kind: "memory" | "read-only" | "unfiled" | "saved" | "none";
  /** The whole line. */
  text: string;
}

/** Reads signals: use it inside an effect or a computed value. */
export function statusOf(doc: string): Status {
  const { kind, unsaved, why } = storage.value;
  if (kind === "memory") return { kind: "memory", text: "storage unavailable: only in memory" };
  if (unsaved > 0) return { kind: "memory", text: `not saved, only in memory: ${why ?? "this device refuses"}` };
  if (readOnly.value) return { kind: "read-only", text: "another tab is editing: this one only shows" };
  const info = docs.value.get(doc);
  if (!info || info.savedAt === null) return { kind: "none", text: "nothing entered yet" };
  if (info.unfiledSince === null && info.filedAt === null) return { kind: "none", text: "nothing entered yet" };
  const saved = `saved on this device at ${clock(info.savedAt)}`;
  if (info.unfiledSince === null) return { kind: "saved", text: `${saved}, in a file since ${clock(info.filedAt ?? info.savedAt)}` };
  const changes = info.changesSinceFile === 1 ? "1 change" : `${info.changesSinceFile} changes`;
  return { kind: "unfiled", text: `${saved}; not in any file since ${clock(info.unfiledSince)} (${changes})` };
}

/** The device's own time; with the date when it is not today's. */
export function clock(iso: string, now: Date = new Date()): string {
  const at = new Date(iso);
  const two = (n: number) => String(n).padStart(2, "0");
  const time = `${two(at.getHours())}:${two(at.getMinutes())}`;
  if (at.toDateString() === now.toDateString()) return time;
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())} ${time}`;
}
