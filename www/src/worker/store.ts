// Storage as the worker needs it: read everything of a kind, and commit a few
// steps as one transaction. Two kinds exist, on the device and in memory.
import type { BytesRow, Key, Op, Rows, StoreName } from "../protocol.ts";

/** What a document's rev must be for the commit to count. */
export interface Guard {
  doc: string;
  /** 0 means that the document must not exist yet. */
  rev: number;
  /** Who writes: a commit made twice after a lost answer is no conflict. */
  by: string;
}

export type Contents = { [S in StoreName]: Rows[S][] };

export interface Store {
  readonly kind: "device" | "memory";
  /** Everything but the bytes, as it stood at one moment. */
  contents(): Promise<Omit<Contents, "bytes">>;
  bytes(doc: string): Promise<BytesRow | undefined>;
  /** All steps or none; resolves when they are durable. Rejects with Conflict when a guard does not hold. */
  commit(ops: Op[], guards?: Guard[]): Promise<void>;
}

/** Another tab has written the document since this one read it. */
export class Conflict extends Error {
  constructor(readonly doc: string) {
    super("another tab has changed this job in between");
  }
}

export function keyText(key: Key): string {
  return JSON.stringify(key);
}
