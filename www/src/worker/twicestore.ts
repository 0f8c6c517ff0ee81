// The device's storage with its second copy. The database is the one that is
// read; the copy follows every commit, and is asked only when the database is
// found empty although it should not be.
import type { BytesRow, DocRow, Op, Row } from "../protocol.ts";
import { CopyLog, type LogFile } from "./copylog.ts";
import type { DeviceStore } from "./devicestore.ts";
import type { Contents, Guard, Store } from "./store.ts";

/** The worker before this one, or another tab, frees the files within this time [ms]. */
const filesLimit = 3000;

export class TwiceStore implements Store {
  readonly kind = "device";
  readonly #device: DeviceStore;
  #copy: Promise<CopyLog | null>;

  private constructor(device: DeviceStore, copy: Promise<CopyLog | null>) {
    this.#device = device;
    this.#copy = copy;
  }

  /**
   * The store, and whether what it holds had to be brought back from the copy.
   * A tab that only reads leaves the copy to the tab that edits.
   */
  static async over(device: DeviceStore, readOnly: boolean): Promise<{ store: TwiceStore; restored: boolean }> {
    const copy = readOnly ? Promise.resolve(null) : openCopy();
    const contents = await device.contents();
    // Every database that was ever used has the row of its device.
    const rows = contents.meta.length > 0 ? [] : ((await copy)?.rows() ?? []);
    if (rows.length > 0) await device.commit(rows.map((row): Op => ({ op: "put", ...row })));
    const inStep = copy.then((log) => (log && rows.length === 0 ? follow(log, device, contents) : log));
    return { store: new TwiceStore(device, inStep.catch(() => null)), restored: rows.length > 0 };
  }

  contents(): Promise<Omit<Contents, "bytes">> {
    return this.#device.contents();
  }

  bytes(doc: string): Promise<BytesRow | undefined> {
    return this.#device.bytes(doc);
  }

  async commit(ops: Op[], guards: Guard[] = []): Promise<void> {
    await this.#device.commit(ops, guards);
    try {
      (await this.#copy)?.append(ops);
    } catch {
      // A copy with a gap would be worse than one that ends here; the next start begins it anew.
      this.#copy = Promise.resolve(null);
    }
  }
}

/** A copy that has missed something (a session without it) is begun anew from the database. */
async function follow(log: CopyLog, device: DeviceStore, { docs, journal, aside, meta }: Omit<Contents, "bytes">): Promise<CopyLog> {
  const revs = (rows: DocRow[]) => rows.map(({ doc, rev }) => `${doc} ${rev}`).sort().join();
  if (revs(log.docs()) === revs(docs)) return log;
  const bytes: Row[] = [];
  for (const { doc } of docs) {
    const row = await device.bytes(doc);
    if (row) bytes.push({ store: "bytes", row });
  }
  const of = <S extends Row["store"]>(store: S, rows: Extract<Row, { store: S }>["row"][]) => rows.map((row) => ({ store, row }) as Row);
  log.replace([...of("meta", meta), ...of("docs", docs), ...bytes, ...of("journal", journal), ...of("aside", aside)]);
  return log;
}

/** Null where the browser has no such files, or gives them to somebody else. */
async function openCopy(): Promise<CopyLog | null> {
  const started = performance.now();
  try {
    const folder = await navigator.storage.getDirectory();
    const open = async (name: string): Promise<LogFile> => {
      const file = await folder.getFileHandle(name, { create: true });
      for (;;) {
        try {
          return await file.createSyncAccessHandle();
        } catch (problem) {
          const taken = problem instanceof DOMException && problem.name === "NoModificationAllowedError";
          if (!taken || performance.now() - started > filesLimit) throw problem;
          await new Promise((later) => setTimeout(later, 50));
        }
      }
    };
    return new CopyLog([await open("second-copy-a"), await open("second-copy-b")]);
  } catch {
    return null;
  }
}
