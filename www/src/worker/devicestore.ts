// Storage on the device: IndexedDB, every transaction with strict durability,
// so that "saved" means written to the disk and not to a buffer.
import { openDB, type DBSchema, type IDBPDatabase } from "idb";
import type { Aside, BytesRow, DocRow, JournalRow, MetaRow, Op, StoreName } from "../protocol.ts";
import { Conflict, type Contents, type Guard, type Store } from "./store.ts";

interface Schema extends DBSchema {
  docs: { key: string; value: DocRow };
  bytes: { key: string; value: BytesRow };
  journal: { key: [string, number]; value: JournalRow };
  aside: { key: [string, number]; value: Aside };
  meta: { key: string; value: MetaRow };
}

const databaseName = "gaugewright";

/** Opening and reading take milliseconds; what does not answer this long has failed [ms]. */
const openLimit = 5000;
const readLimit = 10_000;

/** Failures that may pass: a storage that is still busy, or was cut off. Any other is a refusal. */
export function mayPass(problem: unknown): boolean {
  return problem instanceof DOMException && ["TimeoutError", "UnknownError", "AbortError"].includes(problem.name);
}

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

  contents(): Promise<Omit<Contents, "bytes">> {
    return this.#withHandle((db) => inTime(everything(db), readLimit));
  }

  bytes(doc: string): Promise<BytesRow | undefined> {
    return this.#withHandle((db) => db.get("bytes", doc));
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

/** One transaction, so that a document and its journal are of one moment even while another tab writes. */
async function everything(db: IDBPDatabase<Schema>): Promise<Omit<Contents, "bytes">> {
  const tx = db.transaction(["docs", "journal", "aside", "meta"]);
  const [docs, journal, aside, meta] = await Promise.all([
    tx.objectStore("docs").getAll(),
    tx.objectStore("journal").getAll(),
    tx.objectStore("aside").getAll(),
    tx.objectStore("meta").getAll(),
  ]);
  return { docs, journal, aside, meta };
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
    return await inTime(opening, openLimit);
  } catch (problem) {
    // A handle that comes after all is not left open.
    opening.then((db) => db.close(), () => {});
    throw problem;
  }
}

async function inTime<T>(work: Promise<T>, limit: number): Promise<T> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new DOMException("no answer", "TimeoutError")), limit);
  });
  try {
    return await Promise.race([work, late]);
  } finally {
    clearTimeout(timer);
  }
}
