// What is open in the core, and how it comes back after the core was replaced:
// bytes first, then the journal, record by record. A record on which the core
// fails twice is set aside; a document whose opening fails twice is left
// closed. Nothing is dropped in either case.
import type { BytesRow, Calling, JournalRow, Suspect } from "../protocol.ts";
import { uuids } from "../ids.ts";
import { CoreDied, type Core, type CoreAnswer } from "./core.ts";
import type { Ledger } from "./ledger.ts";
import type { Life } from "./life.ts";

/** The page waits this long for a call [ms]. */
const callLimit = 2000;
/** The same for calls that read or write a whole document [ms]. */
const wholeLimit = 20000;

export function aRequest(n: number): Calling {
  return { what: "request", n, limit: callLimit };
}

export function aWholeRequest(n: number): Calling {
  return { what: "request", n, limit: wholeLimit };
}

/** A record that brings bytes brings a whole document. */
export function aRecord(doc: string, seq: number, bytes: Uint8Array | null = null): Calling {
  return { what: "record", suspect: { doc, seq }, limit: seq === 0 || bytes !== null ? wholeLimit : callLimit };
}

export const aSnapshot: Calling = { what: "snapshot", limit: wholeLimit };

/** Records set aside in one replay before the core itself is held to be ill. */
const asidesAllowed = 3;

export interface OpenDocument {
  /** The core's answer to opening it. */
  answer: string;
  /** Journal records that are in the core. */
  applied: Set<JournalRow>;
  /** Answers given while replaying, by journal number. */
  replayed: Map<number, string>;
}

export class Broken extends Error {}
export class NoDocument extends Error {}

export class Session {
  readonly #open = new Map<string, OpenDocument>();
  /** The table that is being looked at before it comes in. */
  table: { name: string; bytes: Uint8Array } | null = null;
  /** Opened files that are not kept on this device (yet). */
  readonly #unkept = new Map<string, BytesRow>();

  constructor(
    readonly ledger: Ledger,
    readonly life: Life,
    readonly calling: (calling: Calling) => void,
    readonly finished: () => void,
    readonly asideChanged: () => void,
  ) {
    life.onLoss = () => this.#open.clear();
  }

  /** One call into the core under the page's watchdog. */
  call(core: Core, calling: Calling, request: string, bytes?: Uint8Array | null): CoreAnswer {
    this.calling(calling);
    try {
      return core.call(request, bytes ?? undefined);
    } finally {
      this.finished();
    }
  }

  /**
   * Runs `work` on an open document; after a failure once more on a new core.
   * The failure counts against the journal record `seq`, if there is one.
   */
  async withOpen<T>(doc: string, work: (core: Core, open: OpenDocument) => T, seq?: number): Promise<T> {
    for (let attempt = 1; ; attempt++) {
      const { core, open } = await this.ensureOpen(doc);
      try {
        return work(core, open);
      } catch (problem) {
        if (!(problem instanceof CoreDied)) throw problem;
        this.life.died(problem.message);
        if (seq !== undefined) await this.accuse({ doc, seq }, problem.message);
        if (attempt === 2) throw problem;
      }
    }
  }

  /** The document, opened and replayed if it is not open already. */
  async ensureOpen(doc: string): Promise<{ core: Core; open: OpenDocument }> {
    for (let asides = 0, unkeptFailures = 0; ; ) {
      const core = await this.life.core();
      const ready = this.#open.get(doc);
      if (ready) return { core, open: ready };
      const unkept = this.#unkept.get(doc);
      const bytes = unkept ?? (await this.#stored(doc));
      let seq = 0;
      try {
        const open = this.#replay(core, doc, bytes, (at) => (seq = at));
        this.#open.set(doc, open);
        this.ledger.clearTries(doc);
        return { core, open };
      } catch (problem) {
        if (!(problem instanceof CoreDied)) throw problem;
        this.life.died(problem.message);
        // A file that is not on this device has no row to count failures in.
        if (unkept && ++unkeptFailures === 2) throw new Broken(problem.message);
        if ((await this.accuse({ doc, seq }, problem.message)) && ++asides > asidesAllowed) {
          throw this.life.giveUp(`the calculation keeps failing: ${problem.message}`, "failing");
        }
      }
    }
  }

  /**
   * Counts a failure; at the second the record is set aside. True if it was.
   * The count is durable before anything else is tried: the next call may be
   * the one that never comes back.
   */
  async accuse({ doc, seq }: Suspect, why: string): Promise<boolean> {
    const tries = await this.ledger.blame(doc, seq);
    if (tries < 2) return false;
    if (seq === 0) {
      await this.ledger.markBroken(doc, why);
      return false;
    }
    await this.ledger.setAside(doc, seq, why);
    this.asideChanged();
    return true;
  }

  /** Opens bytes that came from outside; throws CoreDied if the core fails on them. */
  async openNew(doc: string, request: string, bytes: Uint8Array | undefined, n: number): Promise<CoreAnswer> {
    for (let attempt = 1; ; attempt++) {
      const core = await this.life.core();
      try {
        const answer = this.call(core, aWholeRequest(n), request, bytes);
        if (!answer.text.startsWith('{"ok":false')) {
          this.#open.set(doc, { answer: answer.text, applied: new Set(), replayed: new Map() });
        }
        return answer;
      } catch (problem) {
        if (!(problem instanceof CoreDied)) throw problem;
        this.life.died(problem.message);
        if (attempt === 2) throw problem;
      }
    }
  }

  /** Holds bytes that are open but not stored, so that a new core can open them again. */
  hold(row: BytesRow): void {
    this.#unkept.set(row.doc, row);
  }

  held(doc: string): BytesRow | undefined {
    return this.#unkept.get(doc);
  }

  isOpen(doc: string): boolean {
    return this.#open.has(doc);
  }

  opened(doc: string): OpenDocument | undefined {
    return this.#open.get(doc);
  }

  release(doc: string): void {
    this.#unkept.delete(doc);
  }

  closed(doc: string): void {
    this.#open.delete(doc);
    this.#unkept.delete(doc);
  }

  async #stored(doc: string): Promise<BytesRow> {
    const row = this.ledger.doc(doc);
    if (!row) throw new NoDocument("there is no such job on this device");
    if (row.tries >= 2) throw new Broken(row.broken ?? "the calculation fails on opening this job");
    const bytes = await this.ledger.bytes(doc);
    if (!bytes) throw new NoDocument("the job's file is missing on this device");
    return bytes;
  }

  #replay(core: Core, doc: string, row: BytesRow, at: (seq: number) => void): OpenDocument {
    at(0);
    const answer = this.call(core, aRecord(doc, 0), row.open, row.bytes);
    if (answer.text.startsWith('{"ok":false')) {
      throw new Broken((JSON.parse(answer.text) as { says?: string }).says ?? "the job's file is refused");
    }
    const open: OpenDocument = { answer: answer.text, applied: new Set(), replayed: new Map() };
    for (const record of this.ledger.records(doc)) {
      at(record.seq);
      const { text } = this.call(core, aRecord(doc, record.seq, record.bytes), record.request, record.bytes);
      open.applied.add(record);
      open.replayed.set(record.seq, text);
    }
    return open;
  }
}

/** The request with which stored bytes are opened. */
export function openRequest(doc: string): string {
  return JSON.stringify({ verb: "open", doc, as: "file", ids: uuids(8) });
}
