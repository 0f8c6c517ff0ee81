// What wasm_exec.js of the Go toolchain leaves on globalThis.
declare class Go {
  importObject: WebAssembly.Imports;
  exited: boolean;
  env: Record<string, string>;
  run(instance: WebAssembly.Instance): Promise<void>;
}

declare module "wasm-exec" {}
