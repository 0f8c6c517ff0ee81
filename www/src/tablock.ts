// Of several tabs one edits. The lock is held by the page, not by the worker,
// so that a worker can be replaced without another tab slipping in; the
// browser frees it when the tab closes or crashes. A tab may also take the
// lock over from one that is forgotten in the background.

const lockName = "gaugewright edit";

export class TabLock {
  /** `changed` is called when the right to edit comes later, or goes. */
  constructor(readonly changed: (edits: boolean) => void) {}

  /** Whether this tab may edit. If not, it stands in line for it. */
  take(): Promise<boolean> {
    // Without locks the compare-and-set of the store is the only guard.
    if (!navigator.locks) return Promise.resolve(true);
    return new Promise((resolve) => {
      this.#request(
        { ifAvailable: true },
        () => resolve(true),
        () => {
          resolve(false);
          this.#stand();
        },
      // Some privacy settings refuse locks altogether.
      ).catch(() => resolve(true));
    });
  }

  /** Takes the right to edit from the tab that has it, which then only reads. */
  takeOver(): void {
    if (!navigator.locks) return;
    void this.#request({ steal: true }, () => this.changed(true), () => {});
  }

  #stand(): void {
    void this.#request({}, () => this.changed(true), () => {});
  }

  async #request(options: LockOptions, granted: () => void, refused: () => void): Promise<void> {
    let held = false;
    try {
      await navigator.locks.request(lockName, options, (lock) => {
        if (!lock) return refused();
        held = true;
        granted();
        // Never resolves: the lock is held as long as the page lives.
        return new Promise<void>(() => {});
      });
    } catch (problem) {
      if (!held) throw problem;
      // Another tab has taken it over.
      this.changed(false);
      this.#stand();
    }
  }
}
