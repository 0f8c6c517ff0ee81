// Commits in order. While one transaction is under way the next ones gather
// and go together, so a burst of key presses costs one flush of the disk. What
// cannot be written stays in line and is tried again; it is never dropped.
import type { Op, StorageState } from "../protocol.ts";
import { Conflict, type Guard, type Store } from "./store.ts";

interface Batch {
  ops: Op[];
  guard: Guard | null;
  /** Called with the time of saving, or null when it stands in memory only. */
  done(savedAt: string | null): void;
  failed(conflict: Conflict): void;
  answered: boolean;
}

const retryAfter = 5000;

export class Commits {
  #line: Batch[] = [];
  /** Documents another tab has written: what this one thinks of them is out of date. */
  readonly #overtaken = new Set<string>();
  #running = false;
  #why: string | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    readonly store: Store,
    readonly memoryOnly: string | null,
    readonly told: (state: StorageState) => void,
    readonly conflict: (doc: string) => void,
  ) {}

  state(): StorageState {
    const unsaved = this.#line.filter((batch) => batch.answered).length;
    const why = this.memoryOnly ?? (unsaved > 0 ? this.#why : null);
    return { kind: this.store.kind, unsaved, ...(why === null ? {} : { why }) };
  }

  /** Steps not written yet, oldest first. */
  waiting(): Op[] {
    return this.#line.flatMap((batch) => batch.ops);
  }

  add(ops: Op[], guard: Guard | null): Promise<string | null> {
    if (guard && this.#overtaken.has(guard.doc)) return Promise.reject(new Conflict(guard.doc));
    return new Promise((done, failed) => {
      this.#line.push({ ops, guard, done, failed, answered: false });
      void this.#run();
    });
  }

  async #run(): Promise<void> {
    if (this.#running) return;
    this.#running = true;
    clearTimeout(this.#timer);
    while (this.#line.length > 0) {
      const batches = [...this.#line];
      try {
        await this.store.commit(
          batches.flatMap((batch) => batch.ops),
          firstGuards(batches),
        );
        this.#line.splice(0, batches.length);
        const savedAt = this.store.kind === "device" ? new Date().toISOString() : null;
        const late = batches.some((batch) => batch.answered);
        for (const batch of batches) batch.done(savedAt);
        if (late) this.told(this.state());
      } catch (problem) {
        if (problem instanceof Conflict) {
          this.#refuse(problem);
          continue;
        }
        this.#why = `this device does not take what is written: ${words(problem)}`;
        for (const batch of batches) {
          batch.done(null);
          batch.answered = true;
        }
        this.told(this.state());
        this.#timer = setTimeout(() => void this.#run(), retryAfter);
        break;
      }
    }
    this.#running = false;
  }

  /** Takes the batches of one document out of the line; the others go on. */
  #refuse(conflict: Conflict): void {
    const refused = this.#line.filter((batch) => batch.guard?.doc === conflict.doc);
    this.#line = this.#line.filter((batch) => batch.guard?.doc !== conflict.doc);
    this.#overtaken.add(conflict.doc);
    for (const batch of refused) batch.failed(conflict);
    this.conflict(conflict.doc);
  }
}

/** Of several guards of one document only the oldest looks at what is stored. */
function firstGuards(batches: Batch[]): Guard[] {
  const first = new Map<string, Guard>();
  for (const { guard } of batches) if (guard && !first.has(guard.doc)) first.set(guard.doc, guard);
  return [...first.values()];
}

function words(problem: unknown): string {
  return problem instanceof Error ? problem.message || problem.name : String(problem);
}
