// Measures the core under Node as the browser runs it: the large job of the
// budgets (5,000 piles, 60 readings each, 20,000 edits), the same schedule in a
// general spreadsheet engine, the page's list of its piles and a pasted table in
// headless Chromium, and the memory of an hour's work. Prints rows with
// the budget beside; never fails.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { coreOf } from "./bench/core.mjs";
import { hourOfWork } from "./bench/hour.mjs";
import { listAndTable } from "./bench/list.mjs";
import { howBusy, measured, mebibytes, median, milli, row, seconds, timed } from "./bench/print.mjs";
import { compareSchedules } from "./bench/schedule.mjs";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const startCore = await coreOf(root);
const large = largeJob();

howBusy();
await measured("the large job", openEditSave);
await measured("the list of the large job, and a table pasted", () => listAndTable(root, large));
await measured("the schedule in a spreadsheet engine", () => compareSchedules(startCore, large.toString()));
await measured("an hour of work", () => hourOfWork(startCore, root));
process.exit(0);

/** The bytes of the large job, made by the test that holds its size. */
function largeJob() {
  const folder = mkdtempSync(join(tmpdir(), "large-"));
  try {
    const file = join(folder, "large.json");
    const env = { ...process.env, GAUGEWRIGHT_LARGE: file };
    execFileSync("go", ["test", "./calc/desk", "-count=1", "-run", "TestTheLargeJobOpens"], { cwd: root, env, stdio: "ignore" });
    return readFileSync(file);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function openEditSave() {
  const { ask, memory } = await startCore();
  const doc = "0193b000-0000-7000-8000-00000000000a";
  const list = { view: "piles", from: 0, count: 60 };
  const bytes = new Uint8Array(large);
  const openAndShow = () => {
    ask({ verb: "open", doc, as: "file" }, bytes);
    ask({ verb: "show", doc, ...list });
  };
  const edited = (path, typed) => {
    const took = [];
    for (let i = 0; i < 40; i++) {
      const entry = { verb: "enter", doc, sitting: { id: "bench" }, at: "2026-12-01T07:00:00Z", do: "type", path, typed: typed + (i % 10), show: list };
      took.push(timed(() => ask(entry)).took);
    }
    return milli(median(took));
  };

  const pile = "0193b007-0000-7000-8000-000000000003";
  const rig = "0193b001-0000-7000-8000-000000000001";
  row("large job: file [MB]", (bytes.length / 1e6).toFixed(1), "20");
  row("large job: open, replay history, first 60 piles, cold [s]", seconds(timed(openAndShow).took), "0.75");
  row("large job: linear memory after opening [MiB]", mebibytes(memory()), "96");
  row("large job: one pile edited, 60 piles shown, median [ms]", edited(`/now/piles/${pile}/workingLoad`, "70"), "5");
  row("large job: one rig edited, 60 piles shown, median [ms]", edited(`/now/rigs/${rig}/mass`, "18"), "100");
  const [kilobytes, view] = largestAnswer(ask, doc, pile, rig);
  row(`large job: the largest answer of all views, ${view} [kB]`, kilobytes.toFixed(1), "64");
  row("large job: save [s]", seconds(timed(() => ask({ verb: "save", doc })).took), "-");
  row("large job: linear memory after saving [MiB]", mebibytes(memory()), "96");
  ask({ verb: "close", doc });
  row("large job: open again, memory grown [s]", seconds(timed(openAndShow).took), "0.75");
}

function largestAnswer(ask, doc, pile, rig) {
  const all = { from: 0, count: 1_000_000 };
  const views = [
    { view: "piles", ...all },
    { view: "pile", pile },
    { view: "sizing", pile },
    { view: "working", step: `${pile}/setReading` },
    { view: "form", path: `/now/piles/${pile}` },
    { view: "form", path: `/now/rigs/${rig}` },
    { view: "kept" },
    { view: "parcel", all: true },
    { view: "info" },
    { view: "choices" },
    { view: "history", path: "/now", ...all },
    { view: "compare", from: "2026-11-02T07:00:00Z", to: "2026-12-02T07:00:00Z" },
  ];
  return views
    .map((view) => [new TextEncoder().encode(ask({ verb: "show", doc, ...view }).answer).length / 1000, view.view])
    .reduce((a, b) => (b[0] > a[0] ? b : a));
}
