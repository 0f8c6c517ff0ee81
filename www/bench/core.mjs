// The core as the worker runs it, under Node.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { compileCore, loaderPath } from "../tools/core.mjs";

/** Compiles the core; the function returned starts one and returns its calls. */
export async function coreOf(root) {
  const folder = mkdtempSync(join(tmpdir(), "core-"));
  let module;
  try {
    module = await WebAssembly.compile(compileCore(root, "./wasm/page", join(folder, "core.wasm")));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  await import(loaderPath(root));
  return async () => {
    const go = new globalThis.Go();
    go.env = { GOGC: "50", GOMEMLIMIT: "72MiB" }; // as in the worker
    const instance = await WebAssembly.instantiate(module, go.importObject);
    void go.run(instance);
    const { call } = globalThis.gaugewright;
    return {
      /** One request of an open document, answered as JSON text; a refusal throws. */
      ask(request, data) {
        const reply = call(JSON.stringify(request), data);
        if (!reply.answer.startsWith('{"ok":true')) throw new Error(reply.answer.slice(0, 200));
        return reply;
      },
      /** Linear memory [B]. It never shrinks. */
      memory: () => instance.exports.mem.buffer.byteLength,
    };
  };
}
