// Runs a compiled Go test with its code shortened as that of the page's core:
// go test -exec "node www/tools/shortened.mjs <runner>". The runner is the one
// that Go brings for wasm under Node. Its tables stay, so that a test that fails
// names a line.
import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { shortenCode } from "./shorten.mjs";

const [runner, program, ...args] = process.argv.slice(2);
// The file is one that go test made for this run and drops afterwards.
writeFileSync(program, shortenCode(readFileSync(program)));
process.exit(spawnSync(runner, [program, ...args], { stdio: "inherit" }).status ?? 1);
