// The same schedule in the core and in a general spreadsheet engine, in one
// process and turn by turn, so that what else the machine does falls on both.
// Both are asked for the same: to be opened, one number changed, the rows read.
// A sheet works out all it holds whatever is read; the core what is asked for.
import { how, median, milli, row, timed, times } from "./print.mjs";
import { sheetsOf } from "./sheet.mjs";

const pageOfRows = 60;

/** `large` is the text of the large job; its records and its history stay out of both. */
export async function compareSchedules(startCore, large) {
  const { format, schema, minReader, job, now } = JSON.parse(large);
  const core = await inCore(startCore, { format, schema, minReader, job, now });
  const sheet = inSheet(sheetsOf(now));
  const all = core.count;
  const [rig] = Object.keys(now.rigs);
  const [circuit] = Object.keys(now.rigs[rig].circuits);
  const [pile] = Object.keys(now.piles);

  const opened = { turns: 5, core: () => core.open(), sheet: () => sheet.open() };
  const ballast = {
    turns: 10,
    core: (k) => core.type(`/now/rigs/${rig}/ballast`, `${41 + k} t`),
    sheet: (k) => sheet.type("rigs", rig, "ballast", 41 + k),
  };
  const bore = {
    turns: 10,
    core: (k) => core.type(`/now/rigs/${rig}/circuits/${circuit}/groups/0/bore`, `${201 + k} mm`),
    sheet: (k) => sheet.type("rigs", rig, "bore", (201 + k) / 1000),
  };
  const load = {
    turns: 40,
    core: (k) => core.type(`/now/piles/${pile}/workingLoad`, `${701 + k} kN`),
    sheet: (k) => sheet.type("piles", pile, "load", 701 + k),
  };
  how(
    `a schedule of ${all.toLocaleString("en")} piles on 4 rigs: in the core (wasm, answers with their words, best make-up searched) and in a sheet of ` +
      `${sheet.formulas} formulas a pile (numbers only, longest segment throughout, no file read); medians of turns taken one after the other`,
  );
  for (const [what, question, rows, budget] of [
    [`open, ${all} rows read`, opened, all, "5 times or more"],
    [`a rig's ballast changed, ${all} rows read`, ballast, all, "10 times or more"],
    [`a rig's bore changed, ${all} rows read`, bore, all, "10 times or more"],
    [`a rig's ballast changed, ${pageOfRows} rows read as a screen does`, ballast, pageOfRows],
    [`a pile's load changed, ${pageOfRows} rows read`, load, pageOfRows],
  ]) {
    const took = { core: [], sheet: [] };
    for (let k = 0; k < question.turns; k++) {
      for (const [name, side] of [["core", core], ["sheet", sheet]]) {
        const turn = () => {
          question[name](k);
          side.read(rows);
        };
        took[name].push(timed(turn).took);
      }
    }
    const [ours, theirs] = [median(took.core), median(took.sheet)];
    row(`sheet / core: ${what} [${milli(theirs)} / ${milli(ours)} ms]`, times(theirs / ours), budget);
  }
  same(core.read(all), sheet.read(all));
  row("set reading, never-exceed reading and state of every pile in both", "the same");
  sheet.close();
}

async function inCore(startCore, job) {
  const { ask } = await startCore();
  const doc = "0193b000-0000-7000-8000-00000000000b";
  // Written out once by the core, so that it has a history of one sitting.
  ask({ verb: "open", doc, as: "file" }, new TextEncoder().encode(JSON.stringify(job)));
  const { bytes } = ask({ verb: "save", doc });
  const page = (from, count) => JSON.parse(ask({ verb: "show", doc, view: "piles", from, count }).answer);
  return {
    count: page(0, 0).count,
    open() {
      ask({ verb: "close", doc });
      ask({ verb: "open", doc, as: "file" }, bytes);
    },
    type: (path, typed) => ask({ verb: "enter", doc, sitting: { id: "bench" }, at: "2026-12-01T07:00:00Z", do: "type", path, typed }),
    read(count) {
      const rows = [];
      while (rows.length < count) rows.push(...page(rows.length, pageOfRows).rows);
      return rows;
    },
  };
}

function inSheet(sheets) {
  let schedule = sheets.build();
  const { names } = sheets.piles;
  return {
    formulas: sheets.formulas,
    open() {
      schedule.close();
      schedule = sheets.build();
    },
    type: (table, id, name, value) => schedule.type(sheets[table], id, name, value),
    read: (count) => schedule.read(count).map((cells) => Object.fromEntries(names.map((name, i) => [name, cells[i]]))),
    close: () => schedule.close(),
  };
}

/** A set reading is shown only where the window is open; pressures are shown in MPa. */
function same(ours, theirs) {
  if (ours.length !== theirs.length) throw new Error(`${ours.length} piles in the core, ${theirs.length} in the sheet`);
  const megapascals = (kPa) => (kPa / 1000).toFixed(1);
  ours.forEach((pile, i) => {
    const other = theirs[i];
    const set = pile.set === null || pile.set.says === megapascals(other.set);
    if (pile.mark !== other.mark || pile.state !== other.state || pile.never.says !== megapascals(other.never) || !set) {
      throw new Error(`core and sheet differ at ${pile.mark}: ${JSON.stringify({ pile, other })}`);
    }
  });
}
