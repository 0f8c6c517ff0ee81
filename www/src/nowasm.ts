// Some browsers run without WebAssembly. The page says so at once, before
// anything is fetched for nothing, and still gives the stored jobs out. Page
// and worker ask here.

/** Null where WebAssembly exists; otherwise what to tell the user. */
export function missingWasm(): string | null {
  if (typeof WebAssembly !== "undefined") return null;
  return (
    "This browser runs without WebAssembly, so nothing can be calculated here. " +
    "On an iPhone or iPad this is Lockdown Mode (Settings, Privacy & Security, Lockdown Mode); " +
    "it can be switched off for this site alone. Jobs stored on this device can still be saved as files."
  );
}
