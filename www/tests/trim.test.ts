// The core is made lighter after the linker: what that may change, and that
// the program still runs, with its collector at work all the time. The tests in
// Go run once more with their code shortened, see wasm-test in the Makefile.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { loaderPath } from "../tools/core.mjs";
import { shortenCode } from "../tools/shorten.mjs";
import { memoryOf, trimData } from "../tools/trim.mjs";
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

/** Every view of the example, and refusals of both kinds. */
const requests: [string, Uint8Array?][] = [
  ['{"verb":"open","doc":"d","as":"file"}', readFileSync(join(root, "examples", "quay-shed.json"))],
  ...["piles", "plan", "order", "lengths", "cutting", "fleet", "history", "criteria", "limits"].map(
    (view): [string] => [JSON.stringify({ verb: "show", doc: "d", view })],
  ),
  ['{"verb":"show","doc":"nobody","view":"piles"}'],
  ["neither this"],
];

check("a core without the tables of traces is the same program", async () => {
  const before = linked();
  const after = trimData(before);
  assert.ok(after.length > 0 && !after.equals(before));
  const [then, now] = [memoryOf(before), memoryOf(after)];
  let cleared = 0;
  let absent = 0;
  let otherwise = then.length - now.length;
  for (let n = 0; n < now.length; n++) {
    if (now[n] === then[n]) continue;
    if (now[n] === 0) cleared++;
    else if (now[n] === 0xff) absent++;
    else otherwise++;
  }
  assert.equal(otherwise, 0, "bytes are cleared or an offset says that there is nothing, never changed to something else");
  assert.ok(cleared > 200_000 && cleared < 800_000, `${cleared} bytes cleared`);
  assert.ok(absent > 10_000 && absent < 100_000, `${absent} bytes of offsets`);

  await import(loaderPath(root));
  assert.deepEqual(await answers(after, requests), await answers(before, requests));
});

check("a core with its code said in fewer instructions is the same program", async () => {
  const before = linked();
  const after = shortenCode(before);
  assert.ok(after.length < 0.95 * before.length, `${after.length} of ${before.length} bytes`);
  assert.deepEqual(memoryOf(after), memoryOf(before));

  await import(loaderPath(root));
  const told = await answers(after, requests);
  assert.match(told[0] as string, /^\{"ok":true/);
  assert.deepEqual(told, await answers(before, requests));
});

check("a toolchain that writes jumps in another way is refused by name", async () => {
  // Shortened code has no jump any more that could be a direct one.
  assert.throws(() => shortenCode(shortenCode(linked())), /writes jumps in a way/);
});

check("a toolchain with another layout of tables is refused by name", async () => {
  const core = Buffer.from(linked());
  const magic = core.indexOf(Buffer.from([0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8]));
  core[magic] = 0xf2;
  assert.throws(() => trimData(core), /lays out its line tables/);
});
