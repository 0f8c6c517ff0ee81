// Prints what the page weighs beside its budgets. With CHECK=1 in the
// environment a figure over its budget is a failure.
import { existsSync, readFileSync, readdirSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const www = dirname(fileURLToPath(import.meta.url));
const site = join(www, "build");
const budgets = JSON.parse(readFileSync(join(www, "budgets.json"), "utf8"));

if (!existsSync(join(site, "index.html"))) {
  console.error("www/build/ is empty: run `make build` first");
  process.exit(1);
}

/** As it goes over the line: compressed where that is smaller. */
function sent(name) {
  const raw = statSync(join(site, name)).size;
  const br = join(site, name + ".br");
  return existsSync(br) ? Math.min(raw, statSync(br).size) : raw;
}

const hashed = (pattern) => {
  const found = readdirSync(join(site, "a")).filter((name) => pattern.test(name) && !/\.(br|gz)$/.test(name));
  if (found.length !== 1) throw new Error(`expected one file ${pattern}, found ${found.length}`);
  return `a/${found[0]}`;
};
const html = "index.html";
const css = hashed(/^app-.*\.css$/);
const js = hashed(/^app-.*\.js$/);
const worker = hashed(/^worker-/);
const core = hashed(/^core-/);
const examples = hashed(/^examples-/);
const icon = hashed(/^icon-.*\.svg$/);
const manifest = hashed(/^manifest-/);

// What one first visit asks for: the page and all it needs, then the service
// worker, which asks for the page once more and for the examples; the other
// files it takes from the browser's cache.
const firstVisit = [html, css, js, icon, manifest, worker, core, "sw.js", html, examples];
const sum = (names) => [...names].reduce((total, name) => total + sent(name), 0);

const rows = [
  ["first visit, all files, brotli [B]", sum(new Set(firstVisit))],
  ["first visit, requests", firstVisit.length],
  ["HTML + CSS + JS, brotli [B]", sum([html, css, js, worker, "sw.js"])],
  ["core, raw [B]", statSync(join(site, core)).size],
  ["core, brotli [B]", sent(core)],
  ["examples, brotli [B]", sent(examples)],
  ["single HTML file without a job [B]", null],
];

let over = 0;
for (const [what, value] of rows) {
  const budget = budgets[what];
  const figure = value === null ? "not built yet" : value.toLocaleString("en");
  const verdict = budget === undefined || value === null ? "" : value <= budget ? "ok" : "OVER";
  if (verdict === "OVER") over++;
  console.log(
    [what.padEnd(38), figure.padStart(14), (budget?.toLocaleString("en") ?? "-").padStart(12), verdict].join("  ").trimEnd(),
  );
}
if (over > 0 && process.env.CHECK === "1") {
  console.error(`${over} figure(s) over budget`);
  process.exit(1);
}
