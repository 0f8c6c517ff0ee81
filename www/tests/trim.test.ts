// The core is made lighter after the linker: what that may change, and that
// the program still runs, with its collector at work all the time.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { loaderPath } from "../tools/core.mjs";
import { memoryOf, trimCore } from "../tools/trim.mjs";
import { check } from "./check.ts";

interface Go {
  env: Record<string, string>;
  importObject: WebAssembly.Imports;
  run(instance: WebAssembly.Instance): Promise<void>;
}
type Call = (request: string, data?: Uint8Array) => { answer: string; data?: Uint8Array };

const root = fileURLToPath(new URL("../../..", import.meta.url));

function linked(): Buffer {
  const folder = mkdtempSync(join(tmpdir(), "core-"));
  try {
    const out = join(folder, "core.wasm");
    const env = { ...process.env, GOOS: "js", GOARCH: "wasm" };
    execFileSync("go", ["build", "-trimpath", "-ldflags=-s -w", "-o", out, "./wasm/page"], { cwd: root, env });
    return readFileSync(out);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function answers(wasm: Uint8Array, requests: [string, Uint8Array?][]): Promise<string[]> {
  const go = new (globalThis as unknown as { Go: new () => Go }).Go();
  go.env = { GOGC: "1" };
  const instance = await WebAssembly.instantiate(await WebAssembly.compile(wasm as Uint8Array<ArrayBuffer>), go.importObject);
  void go.run(instance);
  const { call } = (globalThis as unknown as { gaugewright: { call: Call } }).gaugewright;
  return requests.map(([request, data]) => call(request, data).answer);
}

check("a core without its line tables is the same program", async () => {
  const before = linked();
  const after = trimCore(before);
  assert.ok(after.length > 0 && !after.equals(before));
  const [then, now] = [memoryOf(before), memoryOf(after)];
  let cleared = 0;
  let otherwise = then.length - now.length;
  for (let n = 0; n < now.length; n++) {
    if (now[n] === then[n]) continue;
    if (now[n] === 0) cleared++;
    else otherwise++;
  }
  assert.equal(otherwise, 0, "bytes are cleared, never changed to something else");
  assert.ok(cleared > 100_000 && cleared < 400_000, `${cleared} bytes cleared`);

  await import(loaderPath(root));
  const job = readFileSync(join(root, "examples", "quay-shed.json"));
  const requests: [string, Uint8Array?][] = [
    ['{"verb":"open","doc":"d","as":"file"}', job],
    ['{"verb":"show","doc":"d","view":"piles"}'],
  ];
  const told = await answers(after, requests);
  for (const answer of told) assert.match(answer, /^\{"ok":true/);
  assert.deepEqual(told, await answers(before, requests));
});

check("a toolchain with another layout of tables is refused by name", async () => {
  const core = Buffer.from(linked());
  const magic = core.indexOf(Buffer.from([0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8]));
  core[magic] = 0xf2;
  assert.throws(() => trimCore(core), /lays out its line tables/);
});
