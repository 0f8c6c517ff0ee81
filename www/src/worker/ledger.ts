// What this device holds: documents, their bytes, their journals, and what was
// set aside. A change is made here at once and committed in the background;
// the promise of each tells when it is durable.
import type { Aside, BytesRow, DocInfo, DocRow, JournalRow, Meta, Op } from "../protocol.ts";
import { uuidv7 } from "../ids.ts";
import { Commits } from "./commits.ts";
import type { Store } from "./store.ts";

export interface NewEntry {
  request: string;
  token: string;
  fold: string | null;
  bytes: Uint8Array | null;
}

export type Saved = Promise<string | null>;

export class Ledger {
  readonly #docs = new Map<string, DocRow>();
  readonly #journal = new Map<string, JournalRow[]>();
  #aside: Aside[] = [];
  /** Documents whose last journal record takes no more folding. */
  readonly #sealed = new Set<string>();
  readonly #by = uuidv7();
  meta: Meta = { device: "", who: "" };

  constructor(
    readonly store: Store,
    readonly commits: Commits,
    readonly readOnly: boolean,
    readonly changed: (info: DocInfo) => void,
  ) {}

  async load(): Promise<void> {
    const { docs, journal, aside, meta } = await this.store.contents();
    for (const row of docs) this.#docs.set(row.doc, row);
    for (const row of journal) {
      const doc = this.#docs.get(row.doc);
      if (doc && row.seq > doc.upTo) this.records(row.doc).push(row);
    }
    for (const rows of this.#journal.values()) rows.sort((a, b) => a.seq - b.seq);
    this.#aside = aside;
    const device = meta[0];
    if (device) this.meta = { device: device.device, who: device.who };
    else this.setMeta({ device: uuidv7(), who: "" });
  }

  setMeta(meta: Partial<Meta>): void {
    this.meta = { ...this.meta, ...meta };
    this.#commit(null, [{ op: "put", store: "meta", row: { name: "device", ...this.meta } }]).catch(() => {});
  }

  infos(): DocInfo[] {
    return [...this.#docs.values()].map(info);
  }

  asides(): Aside[] {
    return this.#aside;
  }

  doc(doc: string): DocRow | undefined {
    return this.#docs.get(doc);
  }

  holding(job: string): string[] {
    return [...this.#docs.values()].filter((row) => row.job === job).map((row) => row.doc);
  }

  /** The journal of a document, oldest first: the live list. */
  records(doc: string): JournalRow[] {
    let rows = this.#journal.get(doc);
    if (!rows) this.#journal.set(doc, (rows = []));
    return rows;
  }

  async bytes(doc: string): Promise<BytesRow | undefined> {
    const waiting = this.commits
      .waiting()
      .findLast((op) => op.op === "put" && op.store === "bytes" && op.row.doc === doc);
    if (waiting?.op === "put" && waiting.store === "bytes") return waiting.row;
    return this.store.bytes(doc);
  }

  /** The stored bytes with exactly those records that are not in them. */
  async stored(doc: string): Promise<{ row: BytesRow; records: JournalRow[] } | undefined> {
    for (;;) {
      const upTo = this.#docs.get(doc)?.upTo;
      const row = await this.bytes(doc);
      if (!row) return undefined;
      // A snapshot taken meanwhile has moved records into bytes that were not read.
      if (this.#docs.get(doc)?.upTo === upTo) return { row, records: this.records(doc) };
    }
  }

  /** A new document; `inFile` when its bytes came from a file. */
  create(doc: string, job: string, title: string, bytes: BytesRow, inFile: boolean): Saved {
    const now = new Date().toISOString();
    const row: DocRow = {
      doc,
      job,
      title,
      changedAt: null,
      savedAt: null,
      filedAt: inFile ? now : null,
      unfiledSince: null,
      changesSinceFile: 0,
      broken: null,
      rev: 0,
      by: this.#by,
      lastSeq: 0,
      upTo: 0,
      tries: 0,
    };
    return this.#put(row, [{ op: "put", store: "bytes", row: bytes }]);
  }

  /** Writes an entry down. Neighbours with the same fold key share one record. */
  append(doc: DocRow, entry: NewEntry): { record: JournalRow; saved: Saved } {
    const rows = this.records(doc.doc);
    const at = new Date().toISOString();
    const last = rows.at(-1);
    const folds =
      last !== undefined && entry.fold !== null && last.fold === entry.fold && !this.#sealed.has(doc.doc);
    const record: JournalRow = {
      doc: doc.doc,
      seq: folds ? last.seq : doc.lastSeq + 1,
      ...entry,
      tries: 0,
      at,
    };
    if (folds) rows[rows.length - 1] = record;
    else rows.push(record);
    this.#sealed.delete(doc.doc);
    const saved = this.#put(
      {
        ...doc,
        lastSeq: record.seq,
        changedAt: at,
        unfiledSince: doc.unfiledSince ?? at,
        changesSinceFile: doc.changesSinceFile + (folds ? 0 : 1),
      },
      [{ op: "put", store: "journal", row: record }],
    );
    return { record, saved };
  }

  /** The record or set-aside entry made with this token, if it is still there. */
  byToken(doc: string, token: string): JournalRow | Aside | undefined {
    return (
      this.records(doc).findLast((row) => row.token === token) ??
      this.#aside.find((row) => row.doc === doc && row.token === token)
    );
  }

  /** A record that goes into a file is never rewritten. */
  seal(doc: string): void {
    this.#sealed.add(doc);
  }

  /** Counts a failure against a record (seq 0: against opening the document); returns all failures so far. */
  async blame(docName: string, seq: number): Promise<number> {
    const doc = this.#docs.get(docName);
    if (!doc) return 0;
    if (seq === 0) {
      const tries = doc.tries + 1;
      await this.#put({ ...doc, tries }, []);
      return tries;
    }
    const row = this.records(docName).find((row) => row.seq === seq);
    if (!row) return 0;
    const tries = ++row.tries;
    await this.#put(doc, [{ op: "put", store: "journal", row }]);
    return tries;
  }

  clearTries(docName: string): void {
    const doc = this.#docs.get(docName);
    if (doc && (doc.tries > 0 || doc.broken !== null)) {
      this.#put({ ...doc, tries: 0, broken: null }, []).catch(() => {});
    }
  }

  async markBroken(docName: string, why: string): Promise<void> {
    const doc = this.#docs.get(docName);
    if (doc) await this.#put({ ...doc, broken: why }, []);
  }

  /** Moves a record out of the journal; its text is kept. */
  async setAside(docName: string, seq: number, why: string): Promise<void> {
    const doc = this.#docs.get(docName);
    const rows = this.records(docName);
    const index = rows.findIndex((row) => row.seq === seq);
    const record = rows[index];
    if (!doc || !record) return;
    rows.splice(index, 1);
    const { request, token } = record;
    const row: Aside = { doc: docName, seq, request, token, why, at: new Date().toISOString() };
    this.#aside = [...this.#aside, row];
    await this.#put(doc, [
      { op: "delete", store: "journal", key: [docName, seq] },
      { op: "put", store: "aside", row },
    ]);
  }

  dropAside(docName: string, seq: number): void {
    this.#aside = this.#aside.filter((row) => row.doc !== docName || row.seq !== seq);
    this.#commit(null, [{ op: "delete", store: "aside", key: [docName, seq] }]).catch(() => {});
  }

  /** New bytes that contain the given records, which leave the journal in the same transaction. */
  snapshot(docName: string, bytes: BytesRow, contained: JournalRow[], title: string | null): Saved {
    const doc = this.#docs.get(docName);
    if (!doc) return Promise.resolve(null);
    // A record folded into since then has newer text: it stays.
    const gone = new Set(contained);
    const live = this.records(docName);
    const leaving = live.filter((row) => gone.has(row));
    const rest = live.filter((row) => !gone.has(row));
    this.#journal.set(docName, rest);
    const upTo = rest[0] ? rest[0].seq - 1 : doc.lastSeq;
    return this.#put({ ...doc, upTo, title: title ?? doc.title }, [
      { op: "put", store: "bytes", row: bytes },
      ...leaving.map((row): Op => ({ op: "delete", store: "journal", key: [docName, row.seq] })),
    ]);
  }

  /** The file with everything up to `seq` has safely left. */
  filed(docName: string, seq: number): Saved {
    const doc = this.#docs.get(docName);
    if (!doc) return Promise.resolve(null);
    const now = new Date().toISOString();
    const since = doc.lastSeq - seq;
    return this.#put(
      {
        ...doc,
        filedAt: now,
        changesSinceFile: Math.max(0, since),
        unfiledSince: since > 0 ? (this.records(docName).find((row) => row.seq > seq)?.at ?? now) : null,
      },
      [],
    );
  }

  forget(docName: string): Saved {
    const doc = this.#docs.get(docName);
    if (!doc) return Promise.resolve(null);
    const asides = this.#aside.filter((row) => row.doc === docName);
    const ops: Op[] = [
      { op: "delete", store: "docs", key: docName },
      { op: "delete", store: "bytes", key: docName },
      ...this.records(docName).map((row): Op => ({ op: "delete", store: "journal", key: [docName, row.seq] })),
      ...asides.map((row): Op => ({ op: "delete", store: "aside", key: [docName, row.seq] })),
    ];
    this.#docs.delete(docName);
    this.#journal.delete(docName);
    this.#aside = this.#aside.filter((row) => row.doc !== docName);
    return this.#commit({ doc: docName, rev: doc.rev, by: this.#by }, ops);
  }

  /** Commits a document row, with its rev moved on, together with other steps. */
  async #put(before: DocRow, ops: Op[]): Saved {
    const row: DocRow = { ...before, rev: before.rev + 1, by: this.#by };
    this.#docs.set(row.doc, row);
    const guard = { doc: row.doc, rev: before.rev, by: this.#by };
    const stored: DocRow = { ...row, savedAt: new Date().toISOString() };
    const savedAt = await this.#commit(guard, [{ op: "put", store: "docs", row: stored }, ...ops]);
    const now = this.#docs.get(row.doc);
    if (now) {
      // The row in hand claims to be saved only after it is.
      if (savedAt !== null) now.savedAt = savedAt;
      this.changed(info(now));
    }
    return savedAt;
  }

  #commit(guard: { doc: string; rev: number; by: string } | null, ops: Op[]): Saved {
    return this.readOnly ? Promise.resolve(null) : this.commits.add(ops, guard);
  }
}

function info(row: DocRow): DocInfo {
  const { doc, job, title, changedAt, savedAt, filedAt, unfiledSince, changesSinceFile, broken } = row;
  return { doc, job, title, changedAt, savedAt, filedAt, unfiledSince, changesSinceFile, broken };
}
