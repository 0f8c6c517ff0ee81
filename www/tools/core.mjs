// Compiles the core for the browser and finds the loader that belongs to it.
import { execFileSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { shortenCode } from "./shorten.mjs";
import { trimData } from "./trim.mjs";

// Packages that are not in a hot loop are compiled without inlining: it makes
// them smaller, and measured no slower.
const plain = ["assess", "basis", "calibration", "demand", "desk", "job", "pile", "rig", "table", "words"];
// The flags make two builds of the same source byte-identical.
const flags = ["-trimpath", "-buildvcs=false", "-ldflags=-s -w -buildid=", ...plain.map((name) => `-gcflags=gaugewright/calc/${name}=-l`)];

/** Compiles a Go main package (path from the repository root) to wasm bytes at `out`. */
export function compileCore(root, pkg, out) {
  execFileSync("go", ["build", ...flags, "-o", out, pkg], {
    cwd: root,
    env: { ...process.env, GOOS: "js", GOARCH: "wasm" },
    stdio: ["ignore", "inherit", "inherit"],
  });
  const core = shortenCode(trimData(readFileSync(out)));
  writeFileSync(out, core);
  return core;
}

/** wasm_exec.js of the toolchain that compiles the core: it carries no promise across Go versions. */
export function loaderPath(root) {
  const goroot = execFileSync("go", ["env", "GOROOT"], { cwd: root, encoding: "utf8" }).trim();
  return join(goroot, "lib", "wasm", "wasm_exec.js");
}
