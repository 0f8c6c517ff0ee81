// Asks the browser to keep this site's storage. Some browsers ask the user and
// leave the promise open, so nothing ever waits for it; and it is asked only
// after something worth keeping was entered.
import { persisted } from "./signals.ts";

let asked = false;

export function askToPersist(): void {
  if (asked || !navigator.storage?.persist) return;
  asked = true;
  navigator.storage.persist().then(
    (granted) => (persisted.value = granted),
    () => (persisted.value = false),
  );
}
