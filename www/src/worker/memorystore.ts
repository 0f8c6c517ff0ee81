// Storage for a browser that gives none: rows in maps. Every step is told to
// the page, which hands the rows to the next worker if this one has to go.
import { keyOf } from "../protocol.ts";
import type { BytesRow, Op, Row, Rows, StoreName } from "../protocol.ts";
import { keyText, type Contents, type Store } from "./store.ts";

export class MemoryStore implements Store {
  readonly kind = "memory";
  readonly #rows = new Map<StoreName, Map<string, Rows[StoreName]>>();

  constructor(
    rows: Row[],
    readonly told: (ops: Op[]) => void,
  ) {
    for (const { store, row } of rows) this.#table(store).set(keyText(keyOf(store, row)), row);
  }

  #table(store: StoreName) {
    let table = this.#rows.get(store);
    if (!table) this.#rows.set(store, (table = new Map()));
    return table;
  }

  #all<S extends StoreName>(store: S): Rows[S][] {
    return [...this.#table(store).values()] as Rows[S][];
  }

  async contents(): Promise<Omit<Contents, "bytes">> {
    return { docs: this.#all("docs"), journal: this.#all("journal"), aside: this.#all("aside"), meta: this.#all("meta") };
  }

  async bytes(doc: string): Promise<BytesRow | undefined> {
    return this.#all("bytes").find((row) => row.doc === doc);
  }

  async commit(ops: Op[]): Promise<void> {
    for (const op of ops) {
      if (op.op === "put") this.#table(op.store).set(keyText(keyOf(op.store, op.row)), op.row);
      else this.#table(op.store).delete(keyText(op.key));
    }
    this.told(ops);
  }
}
