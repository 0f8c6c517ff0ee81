// Of several tabs one edits. The lock is held by the page, not by the worker,
// so that a worker can be replaced without another tab slipping in; the
// browser frees it when the tab closes or crashes.

const lockName = "gaugewright edit";

/**
 * Resolves with true if this tab may edit. If not, `promoted` is called once
 * the editing tab is gone.
 */
export function takeTab(promoted: () => void): Promise<boolean> {
  const { locks } = navigator;
  // Without locks the compare-and-set of the store is the only guard.
  if (!locks) return Promise.resolve(true);
  return new Promise((resolve) => {
    const refused = () => {
      resolve(false);
      locks.request(lockName, () => {
        promoted();
        return held();
      }).catch(() => {});
    };
    locks
      .request(lockName, { ifAvailable: true }, (lock) => {
        if (!lock) return refused();
        resolve(true);
        return held();
      })
      // Some privacy settings refuse locks altogether.
      .catch(() => resolve(true));
  });
}

/** Never resolves: the lock is held as long as the page lives. */
function held(): Promise<never> {
  return new Promise(() => {});
}
