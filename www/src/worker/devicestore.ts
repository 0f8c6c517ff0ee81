// Storage on the device: IndexedDB, every transaction with strict durability,
// so that "saved" means written to the disk and not to a buffer.
import { openDB, type DBSchema, type IDBPDatabase } from "idb";
import type { Aside, BytesRow, DocRow, JournalRow, MetaRow, Op, Rows, StoreName } from "../protocol.ts";
import { Conflict, type Guard, type Store } from "./store.ts";

interface Schema extends DBSchema {
  docs: { key: string; value: DocRow };
  bytes: { key: string; value: BytesRow };
  journal: { key: [string, number]; value: JournalRow };
  aside: { key: [string, number]; value: Aside };
  meta: { key: string; value: MetaRow };
}

const databaseName = "gaugewright";

/** Opening takes milliseconds; a browser that does not answer is treated as one that refuses. */
const openLimit = 5000;

export class DeviceStore implements Store {
  readonly kind = "device";
  #db: IDBPDatabase<Schema> | null;

  private constructor(db: IDBPDatabase<Schema>) {
    this.#db = db;
  }

  /** Rejects when the browser gives no storage. */
  static async open(): Promise<DeviceStore> {
    return new DeviceStore(await connect());
  }

  all<S extends StoreName>(store: S): Promise<Rows[S][]> {
    return this.#withHandle((db) => db.getAll(store) as Promise<Rows[S][]>);
  }

  of<S extends "journal" | "bytes">(store: S, doc: string): Promise<Rows[S][]> {
    const range = store === "bytes" ? doc : IDBKeyRange.bound([doc, 0], [doc, Infinity]);
    return this.#withHandle((db) => db.getAll(store, range as never) as Promise<Rows[S][]>);
  }

  commit(ops: Op[], guards: Guard[] = []): Promise<void> {
    return this.#withHandle((db) => write(db, ops, guards));
  }

  /**
   * Runs `work`; if the handle turns out to be dead (some browsers cut it while
   * the page is in the background), opens a new one and tries once more.
   */
  async #withHandle<T>(work: (db: IDBPDatabase<Schema>) => Promise<T>): Promise<T> {
    const db = (this.#db ??= await connect());
    try {
      return await work(db);
    } catch (problem) {
      if (problem instanceof Conflict) throw problem;
      // Only the first of several failing calls replaces the handle.
      if (this.#db === db) {
        this.#db = null;
        try {
          db.close();
        } catch {
          // A dead handle may refuse even that.
        }
      }
      return work((this.#db ??= await connect()));
    }
  }
}

async function write(db: IDBPDatabase<Schema>, ops: Op[], guards: Guard[]): Promise<void> {
  const names = new Set<StoreName>(ops.map((op) => op.store));
  if (guards.length > 0) names.add("docs");
  const tx = db.transaction([...names], "readwrite", { durability: "strict" });
  // Without this a rejected `done` would also be reported as unhandled.
  tx.done.catch(() => {});
  try {
    for (const guard of guards) {
      const current = await tx.objectStore("docs").get(guard.doc);
      const rev = current?.rev ?? 0;
      if (rev > guard.rev && current?.by === guard.by) continue;
      if (rev !== guard.rev) throw new Conflict(guard.doc);
    }
    for (const op of ops) {
      if (op.op === "put") tx.objectStore(op.store).put(op.row as never).catch(() => {});
      else tx.objectStore(op.store).delete(op.key as never).catch(() => {});
    }
  } catch (problem) {
    try {
      tx.abort();
    } catch {
      // The transaction has ended by itself.
    }
    throw problem;
  }
  // Said openly, the commit goes on even while a long call holds this thread.
  tx.commit();
  await tx.done;
}

async function connect(): Promise<IDBPDatabase<Schema>> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error("the browser's storage does not answer")), openLimit);
  });
  const opening = openDB<Schema>(databaseName, 1, {
    upgrade(db) {
      db.createObjectStore("docs", { keyPath: "doc" });
      db.createObjectStore("bytes", { keyPath: "doc" });
      db.createObjectStore("journal", { keyPath: ["doc", "seq"] });
      db.createObjectStore("aside", { keyPath: ["doc", "seq"] });
      db.createObjectStore("meta", { keyPath: "name" });
    },
    blocking: (_current, _blocked, event) => (event.target as IDBDatabase | null)?.close(),
  });
  try {
    return await Promise.race([opening, late]);
  } finally {
    clearTimeout(timer);
  }
}
