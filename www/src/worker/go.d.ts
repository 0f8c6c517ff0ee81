// What wasm_exec.js of the Go toolchain leaves on globalThis.
declare class Go {
  importObject: WebAssembly.Imports;
  exited: boolean;
  run(instance: WebAssembly.Instance): Promise<void>;
}

declare module "wasm-exec" {}

/** Name of the core's file beside the worker, put in by the build. */
declare const __CORE__: string;
