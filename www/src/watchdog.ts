// Watches over calls that cannot be interrupted. The worker announces each one
// with its limit; if it does not come back in time, the worker is given up.

/**
 * After a pause of the whole machine, timers fire before the messages that
 * waited meanwhile are read. They get this long [ms].
 */
const grace = 500;

export class Watchdog {
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(readonly silent: () => void) {}

  /** A call begins that may take `limit` milliseconds. */
  arm(limit: number): void {
    this.disarm();
    this.#timer = setTimeout(() => {
      this.#timer = setTimeout(this.silent, grace);
    }, limit);
  }

  disarm(): void {
    clearTimeout(this.#timer);
  }
}
