// Fetches and compiles the core. The page does it first, while the worker is
// still coming up, and hands the compiled module over, to every worker it
// starts; where that fails the worker tries by itself.

/** `base` is the address of a file beside the core. */
export async function loadCore(base: string): Promise<WebAssembly.Module> {
  const response = await fetch(new URL(__CORE__, base));
  if (!response.ok) throw new Error(`the calculation could not be fetched (answer ${response.status})`);
  const type = response.headers.get("Content-Type")?.split(";")[0]?.trim();
  // Streaming refuses any other type, and a refused body cannot be read again.
  if (type === "application/wasm") return WebAssembly.compileStreaming(response);
  return WebAssembly.compile(await response.arrayBuffer());
}
