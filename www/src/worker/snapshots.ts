// Folds the journal into the stored bytes when the user pauses or the journal
// has grown long. Until then the journal alone makes every entry durable, so
// nothing is lost if a snapshot is late or fails.
import { CoreDied } from "./core.ts";
import type { Ledger } from "./ledger.ts";
import { aSnapshot, openRequest, type Session } from "./session.ts";
import { uuids } from "../ids.ts";

const idle = 1000;
const longest = 200;

/** A large job takes a while to write out; it is then written out less often. */
const idlePerSave = 10;

export class Snapshots {
  readonly #timers = new Map<string, ReturnType<typeof setTimeout>>();
  readonly #cost = new Map<string, number>();
  /** Documents on whose writing out the core failed: left to their journals. */
  readonly #failed = new Set<string>();

  constructor(
    readonly ledger: Ledger,
    readonly session: Session,
    /** Runs work in turn with all other calls into the core. */
    readonly inTurn: (work: () => Promise<void>) => Promise<void>,
    readonly allowed: boolean,
  ) {}

  /** After an entry: a snapshot is due when nothing follows for a while. */
  due(doc: string): void {
    if (!this.allowed || this.ledger.readOnly || this.#failed.has(doc)) return;
    clearTimeout(this.#timers.get(doc));
    // Another copy of the job that was put in is costly to put in again at the next start.
    const records = this.ledger.records(doc);
    if (records.length >= longest || records.some(({ bytes }) => bytes !== null)) {
      void this.inTurn(() => this.take(doc));
      return;
    }
    const wait = Math.max(idle, idlePerSave * (this.#cost.get(doc) ?? 0));
    this.#timers.set(doc, setTimeout(() => void this.inTurn(() => this.take(doc)), wait));
  }

  async take(doc: string): Promise<void> {
    clearTimeout(this.#timers.get(doc));
    const open = this.session.opened(doc);
    const row = this.ledger.doc(doc);
    if (!this.allowed || this.ledger.readOnly || this.#failed.has(doc)) return;
    if (!open || !row || this.ledger.commits.state().unsaved > 0) return;
    const applied = () => this.ledger.records(doc).filter((record) => open.applied.has(record));
    if (applied().length === 0) return;
    const started = performance.now();
    let saved;
    let contained;
    try {
      const core = await this.session.life.core();
      if (this.session.opened(doc) !== open) return;
      const request = JSON.stringify({ verb: "save", doc, for: "device", ids: uuids(2) });
      contained = applied();
      saved = this.session.call(core, aSnapshot, request);
    } catch (problem) {
      if (problem instanceof CoreDied) {
        this.#failed.add(doc);
        this.session.life.died(problem.message);
      }
      return;
    }
    if (!saved.bytes) return;
    const { title } = JSON.parse(saved.text) as { title?: string };
    const bytes = { doc, bytes: saved.bytes, open: openRequest(doc) };
    await this.ledger.snapshot(doc, bytes, contained, title ?? null).catch(() => {});
    this.#cost.set(doc, performance.now() - started);
  }

  /** All that is due, now. */
  async takeAll(): Promise<void> {
    for (const { doc } of this.ledger.infos()) await this.inTurn(() => this.take(doc));
  }

  forget(doc: string): void {
    clearTimeout(this.#timers.get(doc));
    this.#timers.delete(doc);
  }
}
