// An hour of work on a job of 200 piles in accelerated time: what the worker
// calls the core with while a person types a key a second, goes from pile to
// pile and looks at the list in between.
import { join } from "node:path";
import { bigJob } from "./bigjob.mjs";
import { how, mebibytes, row } from "./print.mjs";

const piles = 200;
const minutes = 60;
/** Keys of one value, one a second; then a pause, in which the device's copy is written. */
const keysAValue = 4;
/** The list of piles is looked at once in so many values, a rig is changed, a file is saved. */
const valuesAList = 5;
const valuesARig = 50;
const valuesAFile = 150;

export async function hourOfWork(startCore, root) {
  const { ask, memory } = await startCore();
  const { text } = bigJob(join(root, "examples"), piles);
  const { now } = JSON.parse(text);
  const doc = "0193c000-0000-7000-8000-00000000000d";
  ask({ verb: "open", doc, as: "file", ids: ids() }, new TextEncoder().encode(text));
  row(`linear memory after opening a job of ${piles} piles [MiB]`, mebibytes(memory()), "16");

  const order = Object.keys(now.piles);
  const [rig] = Object.keys(now.rigs);
  let keys = 0;
  let snapshots = 0;
  let files = 0;
  let sitting = 0;
  const show = (view, more) => ask({ verb: "show", doc, view, ...more });
  const key = (path, typed, view) => {
    const at = new Date(Date.UTC(2026, 10, 2, 7) + keys++ * 1000).toISOString();
    ask({ verb: "enter", doc, sitting: { id: id(sitting), who: "A", device: "phone" }, at, do: "type", path, typed, ids: ids(), show: view });
  };
  for (let value = 1; keys < minutes * 60; value++) {
    const pile = order[(value * 7) % order.length];
    const changesRig = value % valuesARig === 0;
    const [name, whole] = [["workingLoad", String(1000 - (value % 300))], ["cutoff", `1${value % 3}.${10 + (value % 80)}`], ["founding", `-${4 + (value % 6)}.${value % 10}`]][value % 3];
    const path = changesRig ? `/now/rigs/${rig}/ballast` : `/now/piles/${pile}/${name}`;
    const typed = changesRig ? `${20 + (value % 30)}.0` : whole;
    // A pile is sized on its screen; its other fields stand in a form.
    const view = changesRig ? { view: "form", path: `/now/rigs/${rig}` } : name === "workingLoad" ? { view: "sizing", pile } : { view: "form", path: `/now/piles/${pile}` };
    for (let k = 0; k < keysAValue; k++) key(path, typed.slice(0, Math.max(1, typed.length - keysAValue + 1 + k)), view);
    // The worker writes the device's copy when nothing follows for a second.
    ask({ verb: "save", doc, for: "device", ids: ids() });
    snapshots++;
    show("pile", { pile });
    if (value % valuesAList === 0) for (let from = 0; from < piles; from += 60) show("piles", { from, count: 60 });
    if (value % valuesAFile === 0) {
      ask({ verb: "save", doc, for: "file", ids: ids() });
      files++;
      sitting++;
    }
  }
  how(
    `an hour in accelerated time: ${keys.toLocaleString("en")} keys, each with the view it changes; after every ${keysAValue} the copy for the device is written (${snapshots} times) ` +
      `and the pile shown, after every ${keysAValue * valuesAList} the whole list; ${files} files saved`,
  );
  row(`linear memory after an hour of a ${piles}-pile job [MiB]`, mebibytes(memory()), "16");
}

let made = 0;
const id = (k) => `0193c000-0000-7000-8000-${String(k).padStart(12, "0")}`;
const ids = () => Array.from({ length: 8 }, () => id(1_000_000 + made++));
