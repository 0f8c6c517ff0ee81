// The same Go benchmarks compiled for this machine and for the browser, the
// latter under Node; prints how many times slower the browser's are.
import { execFileSync } from "node:child_process";
import { join, dirname } from "node:path";
import { fileURLToPath } from "node:url";
import { how, howBusy, measured, median, row, times } from "./print.mjs";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const repeats = 5;
const benchtime = "100ms";

/** [package, benchmark, words, budget] */
const rows = [
  ["window", "Window", "float kernel: set reading, limit readings, verdict", "2.5"],
  ["head", "Compute", "float kernel: what is to be done at a pile head", "2.5"],
  ["segment", "Best/60m/6_lengths", "make-up search, in whole numbers", "2.5"],
  ["assess", "Pile", "one pile assessed, without a working", "-"],
  ["document", "ReadExample", "reading an example job", "-"],
  ["document", "DigestExample", "its digest: canonical form and SHA-256", "-"],
  ["document", "HashExample", "SHA-256 of its bytes", "-"],
];

/** Median time of each benchmark [ns]. */
function timesOf(env, exec) {
  const packages = [...new Set(rows.map(([name]) => `./calc/${name}`))];
  const pattern = rows.map(([, name]) => `^Benchmark${name.replaceAll("/", "$/^")}$`).join("|");
  const args = ["test", "-run", "^$", "-bench", pattern, "-benchtime", benchtime, "-count", String(repeats), ...exec, ...packages];
  const out = execFileSync("go", args, { cwd: root, env: { ...process.env, ...env }, encoding: "utf8", maxBuffer: 1 << 24 });
  const found = new Map();
  let name = "";
  for (const line of out.split("\n")) {
    name = /^pkg: \S*\/(\w+)$/.exec(line)?.[1] ?? name;
    const [, benchmark, ns] = /^Benchmark(\S+?)(?:-\d+)?\s+\d+\s+([\d.]+) ns\/op/.exec(line) ?? [];
    if (benchmark) found.set(`${name} ${benchmark}`, [...(found.get(`${name} ${benchmark}`) ?? []), Number(ns)]);
  }
  return (of, benchmark) => median(found.get(`${of} ${benchmark}`) ?? []);
}

howBusy();
await measured("wasm / native", () => {
  const native = timesOf({}, []);
  const goroot = execFileSync("go", ["env", "GOROOT"], { cwd: root, encoding: "utf8" }).trim();
  const wasm = timesOf({ GOOS: "js", GOARCH: "wasm" }, ["-exec", join(goroot, "lib", "wasm", "go_js_wasm_exec")]);
  how(`the same Go benchmarks under Node and native, median of ${repeats} of ${benchtime} each`);
  for (const [of, benchmark, words, budget] of rows) {
    const [slow, fast] = [wasm(of, benchmark), native(of, benchmark)];
    if (Number.isNaN(slow / fast)) throw new Error(`no figure for ${of} ${benchmark}`);
    row(`wasm / native: ${words} [${micro(slow)} / ${micro(fast)}]`, times(slow / fast), budget);
  }
});

function micro(ns) {
  return ns < 1e6 ? `${(ns / 1000).toPrecision(3)} us` : `${(ns / 1e6).toPrecision(3)} ms`;
}
