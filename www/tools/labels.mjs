// Writes src/gen/labels.json from the core's own catalogue of words, so that
// page, print and core say the same; and late.json, the words that a running core
// hands out, which only a test reads.
import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";

// Enough for the page's frame while the native shell cannot print the catalogue.
const fallback = {
  "app.name": "Gaugewright",
  "app.purpose": "Gauge readings for pressing piles",
};

export function writeLabels(root, file) {
  write(root, file, []);
  write(root, join(dirname(file), "late.json"), ["late"]);
}

function write(root, file, which) {
  let text;
  if (existsSync(join(root, "wasm", "stdio"))) {
    text = execFileSync("go", ["run", "./wasm/stdio", "labels", ...which], {
      cwd: root,
      encoding: "utf8",
      stdio: ["ignore", "pipe", "inherit"],
    });
    JSON.parse(text);
  } else {
    console.warn("labels: wasm/stdio is not there, a few built-in words are used");
    text = JSON.stringify(fallback, null, 1);
  }
  mkdirSync(dirname(file), { recursive: true });
  if (!existsSync(file) || readFileSync(file, "utf8") !== text) writeFileSync(file, text);
}
