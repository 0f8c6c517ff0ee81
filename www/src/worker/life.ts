// The life of the core: started when first wanted, thrown away when it has
// failed, started again; given up after three starts in a row that came to
// nothing.
import type { CoreState } from "../protocol.ts";
import { missingWasm } from "../nowasm.ts";
import { startCore, type Core } from "./core.ts";

const startsAllowed = 3;

/** The core will not run; the words say why. */
export class Unavailable extends Error {}

export class Life {
  #module: Promise<WebAssembly.Module> | null = null;
  #core: Promise<Core> | null = null;
  #failures: number;
  #unavailable: Unavailable | null = null;
  /** Called when a core is gone, so that nothing is thought to be open in it. */
  onLoss: () => void = () => {};

  constructor(
    failedStarts: number,
    readonly told: (state: CoreState, labels?: string) => void,
    /** Gets the compiled core, from the page or the network. */
    readonly load: () => Promise<WebAssembly.Module>,
    /** Runs a start, which cannot be interrupted, under the page's watchdog. */
    readonly watched: <T>(work: () => Promise<T>) => Promise<T>,
  ) {
    this.#failures = failedStarts;
  }

  /** The running core. Rejects with Unavailable when there will be none. */
  core(): Promise<Core> {
    if (this.#unavailable) return Promise.reject(this.#unavailable);
    return (this.#core ??= this.#start());
  }

  /** Whether a core is there or on its way. */
  running(): boolean {
    return this.#core !== null && this.#unavailable === null;
  }

  /** The core is not to be called any more. */
  died(why: string): void {
    this.#core = null;
    this.onLoss();
    this.told({ state: "replacing", why });
  }

  giveUp(why: string, reason: "no-wasm" | "start" | "failing"): Unavailable {
    this.#core = null;
    this.onLoss();
    this.#unavailable = new Unavailable(why);
    this.told({ state: "unavailable", why, reason });
    return this.#unavailable;
  }

  /** The user, or a network that is back, asks for another try. */
  retry(): void {
    if (!this.#unavailable) return;
    this.#unavailable = null;
    this.#failures = 0;
    this.core().catch(() => {});
  }

  async #start(): Promise<Core> {
    const missing = missingWasm();
    if (missing !== null) throw this.giveUp(missing, "no-wasm");
    this.told({ state: "starting" });
    let why = "the calculation did not answer when it was started";
    while (this.#failures < startsAllowed) {
      try {
        const module = await (this.#module ??= this.load());
        let started: Core | undefined;
        const core = await this.watched(() => startCore(module, () => this.#ended(started)));
        started = core;
        this.#failures = 0;
        this.told({ state: "ready" }, core.labels);
        return core;
      } catch (problem) {
        this.#module = null;
        this.#failures++;
        why = problem instanceof Error ? problem.message : String(problem);
        if (this.#failures < startsAllowed) await pause(300 * this.#failures);
      }
    }
    throw this.giveUp(why, "start");
  }

  /** The Go program returned by itself; only the core now in use matters. */
  #ended(core: Core | undefined): void {
    if (!core || !this.#core) return;
    this.#core.then(
      (current) => {
        if (current === core) this.died("the calculation ended");
      },
      () => {},
    );
  }
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}
