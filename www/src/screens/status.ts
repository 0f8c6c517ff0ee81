// The status line under every screen. It says only what is true at the moment,
// and the worst thing first.
import { docs, readOnly, storage } from "../signals.ts";
import { clock } from "./clock.ts";
import { label } from "./labels.ts";

export interface Status {
  kind: "memory" | "read-only" | "unfiled" | "saved" | "none";
  /** The whole line. */
  text: string;
}

/** Reads signals: use it inside an effect or a computed value. */
export function statusOf(doc: string): Status {
  const { kind, unsaved, why = "" } = storage.value;
  if (kind === "waiting") return { kind: "memory", text: label("status.waiting", { why }) };
  if (kind === "memory") return { kind: "memory", text: label("status.memory") };
  if (unsaved > 0) return { kind: "memory", text: label("status.unsaved", { why }) };
  if (readOnly.value) return { kind: "read-only", text: label("status.readonly") };
  const info = docs.value.get(doc);
  if (!info || info.savedAt === null || (info.unfiledSince === null && info.filedAt === null)) {
    return { kind: "none", text: label("status.none") };
  }
  const at = clock(info.savedAt);
  if (info.unfiledSince === null) {
    return { kind: "saved", text: label("status.saved", { at, filed: clock(info.filedAt ?? info.savedAt) }) };
  }
  const key = info.changesSinceFile === 1 ? "status.unfiled.one" : "status.unfiled";
  return { kind: "unfiled", text: label(key, { at, since: clock(info.unfiledSince), count: String(info.changesSinceFile) }) };
}
