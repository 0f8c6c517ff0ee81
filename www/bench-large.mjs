// The large job of the budgets (5,000 piles, 60 readings each, 20,000 edits) in
// the core as the browser runs it, under Node: what opening, editing and saving
// cost in time and memory. Prints rows with the budget beside; never fails.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { compileCore, loaderPath } from "./tools/core.mjs";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const folder = mkdtempSync(join(tmpdir(), "large-"));
const row = (what, measured, budget) => console.log(what.padEnd(76), String(measured).padStart(10), " " + budget);
const mebibytes = (bytes) => (bytes / 2 ** 20).toFixed(1);

try {
  const file = join(folder, "large.json");
  execFileSync("go", ["test", "./calc/desk", "-count=1", "-run", "TestTheLargeJobOpens"], { cwd: root, env: { ...process.env, GAUGEWRIGHT_LARGE: file }, stdio: "ignore" });
  const module = await WebAssembly.compile(compileCore(root, "./wasm/page", join(folder, "core.wasm")));
  await import(loaderPath(root));
  const go = new globalThis.Go();
  go.env = { GOGC: "50", GOMEMLIMIT: "80MiB" }; // as in the worker
  const instance = await WebAssembly.instantiate(module, go.importObject);
  void go.run(instance);
  const memory = () => mebibytes(instance.exports.mem.buffer.byteLength);

  const bytes = new Uint8Array(readFileSync(file));
  const doc = "0193b000-0000-7000-8000-00000000000a";
  const list = { view: "piles", from: 0, count: 60 };
  const call = (request, data) => {
    const began = performance.now();
    const answer = globalThis.gaugewright.call(JSON.stringify({ doc, ...request }), data);
    if (!answer.answer.startsWith('{"ok":true')) throw new Error(answer.answer.slice(0, 200));
    return { took: performance.now() - began, ...answer };
  };
  const median = (path, typed) => {
    const took = [];
    for (let i = 0; i < 40; i++) {
      took.push(call({ verb: "enter", sitting: { id: "bench" }, at: "2026-12-01T07:00:00Z", do: "type", path, typed: typed + (i % 10), show: list }).took);
    }
    return took.sort((a, b) => a - b)[20].toFixed(1);
  };

  row("large job: file [MB]", (bytes.length / 1e6).toFixed(1), "20");
  const opened = call({ verb: "open", as: "file" }, bytes).took;
  const shown = call({ verb: "show", ...list });
  row("large job: open, replay history, first 60 piles, cold [s]", ((opened + shown.took) / 1000).toFixed(2), "0.75");
  row("large job: the answer with 60 piles [kB]", (shown.answer.length / 1000).toFixed(1), "64");
  row("large job: linear memory after opening [MiB]", memory(), "96");
  row("large job: one pile edited, 60 piles shown, median [ms]", median("/now/piles/0193b007-0000-7000-8000-000000000003/workingLoad", "70"), "5");
  row("large job: one rig edited, 60 piles shown, median [ms]", median("/now/rigs/0193b001-0000-7000-8000-000000000001/mass", "18"), "100");
  row("large job: save [s]", (call({ verb: "save" }).took / 1000).toFixed(2), "-");
  row("large job: linear memory after saving [MiB]", memory(), "96");
  call({ verb: "close" });
  row("large job: open again, memory grown [s]", (call({ verb: "open", as: "file" }, bytes).took / 1000).toFixed(2), "0.75");
  row("the same schedule in a general spreadsheet engine", "not yet", "open 5x, rig change 10x slower than ours");
} finally {
  rmSync(folder, { recursive: true, force: true });
}
process.exit(0);
