// The page's end of the bridge: sends numbered requests, keeps each until it
// is answered, and starts a new worker when the old one is silent or broken.
import { keyOf } from "./protocol.ts";
import type { Calling, Event, HostCode, Op, Reply, Row, Suspect, ToWorker } from "./protocol.ts";
import { Watchdog } from "./watchdog.ts";

type Verbs<T> = T extends { n: number } ? Omit<T, "n"> : never;
export type Request = Exclude<Verbs<ToWorker>, { verb: "start" | "module" }>;

interface Waiting {
  message: ToWorker;
  done(reply: Reply): void;
  /** How often the worker fell silent over this very request. */
  failures: number;
}

/** A request that silences the worker this often is answered by a refusal. */
const failuresAllowed = 2;
/** Starts without a single answer after which the core is not started any more. */
const startsAllowed = 3;

export interface BridgeHooks {
  event(event: Event): void;
  started(start: NonNullable<Reply["start"]>): void;
}

export class Bridge {
  #worker: Worker | null = null;
  #next = 1;
  readonly #waiting = new Map<number, Waiting>();
  readonly #watchdog = new Watchdog(() => this.#silent());
  /** The call under way, for the blame if it never ends. */
  #running: Calling | null = null;
  #failedStarts = 0;
  #snapshots = true;
  #readOnly = false;
  /** Rows that live in memory only; null while the device stores them. */
  #rows: Map<string, Row> | null = null;

  constructor(
    readonly url: URL,
    /** The compiled core for every worker; null when the worker must see for itself. */
    readonly module: Promise<WebAssembly.Module | null>,
    readonly hooks: BridgeHooks,
  ) {}

  /** Starts the worker, or starts it anew; unanswered requests are sent again. */
  start(readOnly: boolean, suspect: Suspect | null = null): void {
    this.#worker?.terminate();
    this.#watchdog.disarm();
    this.#running = null;
    this.#readOnly = readOnly;
    const worker = new Worker(this.url, { name: "gaugewright" });
    this.#worker = worker;
    worker.onmessage = ({ data }: MessageEvent<Reply | Event>) => {
      if (this.#worker === worker) this.#heard(data);
    };
    worker.onerror = (event) => {
      event.preventDefault();
      if (this.#worker === worker) this.#broken(event.message);
    };
    worker.postMessage({
      n: 0,
      verb: "start",
      readOnly,
      suspect,
      failedStarts: this.#failedStarts,
      snapshots: this.#snapshots,
      rows: this.#rows ? [...this.#rows.values()] : null,
    } satisfies ToWorker);
    for (const { message } of this.#waiting.values()) worker.postMessage(message);
    void this.module.then((module) => {
      if (this.#worker === worker) worker.postMessage({ n: 0, verb: "module", module } satisfies ToWorker);
    });
  }

  /** Sends a request; always resolves, if need be with a refusal. */
  send(request: Request): Promise<Reply> {
    const n = this.#next++;
    const message = { ...request, n } as ToWorker;
    return new Promise((done) => {
      this.#waiting.set(n, { message, done, failures: 0 });
      this.#worker?.postMessage(message);
    });
  }

  #heard(data: Reply | Event): void {
    if ("event" in data) {
      if (data.event === "calling") {
        this.#running = data;
        this.#watchdog.arm(data.limit);
      } else if (data.event === "called") {
        this.#running = null;
        this.#watchdog.disarm();
      } else {
        if (data.event === "core" && data.core.state === "ready") this.#failedStarts = 0;
        if (data.event === "rows") this.#keep(data.ops);
        if (data.event === "conflict") this.#refuseEntries(data.doc);
        this.hooks.event(data);
      }
    } else if (data.start) {
      this.hooks.started(data.start);
    } else {
      const waiting = this.#waiting.get(data.n);
      this.#waiting.delete(data.n);
      waiting?.done(data);
    }
  }

  /** The worker does not come back from a call. */
  #silent(): void {
    const running = this.#running;
    if (!running) return;
    const { what, n, suspect } = running;
    if (what === "start") this.#failedStarts++;
    if (what === "snapshot") this.#snapshots = false;
    // A journal record is judged by the worker, any other request here.
    const waiting = what === "request" && n !== undefined ? this.#waiting.get(n) : undefined;
    if (waiting && ++waiting.failures >= failuresAllowed) {
      this.#waiting.delete(waiting.message.n);
      waiting.done(refused(waiting.message.n, "core-failed", "The calculation does not answer this question. Nothing was changed."));
    }
    this.hooks.event({ event: "core", core: { state: "replacing", why: "the calculation did not answer" } });
    this.start(this.#readOnly, suspect ?? null);
  }

  /** The worker's script could not be loaded or threw. */
  #broken(why: string): void {
    if (++this.#failedStarts > startsAllowed) {
      this.#watchdog.disarm();
      const words = `the page's worker does not start: ${why}`;
      this.hooks.event({ event: "core", core: { state: "unavailable", why: words, reason: "start" } });
      for (const [n, waiting] of this.#waiting) waiting.done(refused(n, "core-unavailable", words));
      this.#waiting.clear();
      return;
    }
    setTimeout(() => this.start(this.#readOnly, this.#running?.suspect ?? null), 300 * this.#failedStarts);
  }

  /**
   * Another tab has written the document. Entries under way were made on what
   * is out of date, so they are not made again by themselves.
   */
  #refuseEntries(doc: string): void {
    for (const [n, { message, done }] of this.#waiting) {
      if (message.verb !== "enter" || message.doc !== doc) continue;
      this.#waiting.delete(n);
      done(refused(n, "conflict", "Another tab has changed this job in between. It is read anew: look, and enter this once more."));
    }
  }

  #keep(ops: Op[]): void {
    this.#rows ??= new Map();
    for (const op of ops) {
      if (op.op === "delete") this.#rows.delete(JSON.stringify([op.store, op.key]));
      else this.#rows.set(JSON.stringify([op.store, keyOf(op.store, op.row)]), { store: op.store, row: op.row } as Row);
    }
  }
}

function refused(n: number, code: HostCode, says: string): Reply {
  return { n, text: JSON.stringify({ ok: false, code, says }) };
}
