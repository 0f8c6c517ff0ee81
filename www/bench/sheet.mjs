// The schedule of a job in a general spreadsheet engine: a sheet each for the
// rigs, the pile types and the criteria, and one with a row for each pile, which
// finds what it names by its name. The columns are the arithmetic of calc/assess
// for one pile but for the search for the best make-up: piles are made up of the
// longest stock length alone. What does not depend on the pile is worked out
// once, beside the rig or the type.
import { HyperFormula } from "hyperformula";

const coherent = { kN: 1, m: 1, mm: 0.001, t: 1, MPa: 1000, "": 1 };

/** "180 t" as a number in the coherent unit; blank stays blank. */
function number(text) {
  if (text === undefined || text === "") return null;
  const [digits, unit = ""] = text.split(" ");
  if (!(unit in coherent)) throw new Error(`the sheet knows no unit ${unit}`);
  return Number(digits) * coherent[unit];
}

// A division that is met but for the last bits counts as met, as in the core.
const up = (x, step) => `ROUNDUP(ROUND((${x})/${step},9),0)*${step}`;
const down = (x, step) => `ROUNDDOWN(ROUND((${x})/${step},9),0)*${step}`;

/** A table: its columns by name; a text is a formula with columns of the same row in braces. */
class Table {
  constructor(sheet, columns, rows) {
    Object.assign(this, { sheet, rows });
    this.names = Object.keys(columns);
    const letters = (row) => (_, name) => `$${this.letter(name)}${row}`;
    this.cells = rows.map((given, i) =>
      Object.values(columns).map((column) => (typeof column === "function" ? column(given) : "=" + column.replace(/\{(\w+)\}/g, letters(i + 1)))),
    );
  }

  letter(name) {
    const i = this.names.indexOf(name);
    if (i < 0) throw new Error(`${this.sheet} has no column ${name}`);
    return (i < 26 ? "" : String.fromCharCode(64 + Math.floor(i / 26))) + String.fromCharCode(65 + (i % 26));
  }

  /** The cells of one column, as a formula on another sheet names them. */
  range(name) {
    return `${this.sheet}!$${this.letter(name)}$1:$${this.letter(name)}$${this.rows.length}`;
  }

  at(name, row) {
    return `INDEX(${this.range(name)},${row})`;
  }
}

function tables(now) {
  const list = (things) => Object.entries(things).map(([id, thing]) => ({ id, ...thing }));
  const stock = list(now.stock).map((line) => number(line.length));
  const rigs = new Table(
    "Rigs",
    {
      id: (r) => r.id,
      cylinders: (r) => Number(r.group.number),
      bore: (r) => number(r.group.bore),
      area: "{cylinders}*PI()/4*{bore}*{bore}",
      onHead: (r) => number(r.circuit.onHead),
      low: (r) => number(r.circuit.efficiency.low),
      high: (r) => number(r.circuit.efficiency.high),
      division: (r) => number(r.gauge.division),
      pressure: (r) => number(r.circuit.maxPressure),
      mass: (r) => number(r.mass),
      ballast: (r) => number(r.ballast),
      share: (r) => number(r.reactionShare) ?? 0.9,
      reaction: "{share}*({mass}+{ballast})*9.80665",
      fullScale: (r) => number(r.gauge.fullScale),
      gaugeLimit: "0.75*{fullScale}",
      grip: (r) => number(r.gripHeight),
    },
    list(now.rigs).map((r) => {
      const circuit = Object.values(r.circuits)[0];
      if (circuit.groups[0].side !== "bore" || circuit.onHeadInMass !== "yes") throw new Error("the sheet is written for other rigs than these");
      return { ...r, circuit, group: circuit.groups[0], gauge: now.gauges[circuit.gauge] };
    }),
  );
  const types = new Table(
    "Types",
    {
      id: (t) => t.id,
      limit: (t) => number(t.pressingLimit),
      bars: (t) => number(t.bars),
      lap: (t) => number(t.lap),
      width: (t) => number(t.width),
      perMetre: "{width}*{width}*2.5",
    },
    list(now.pileTypes),
  );
  const criteria = new Table("Criteria", { id: (c) => c.id, factor: (c) => number(c.factor) }, list(now.criteria));
  const longest = Math.max(...stock);
  const of = (table, name, row) => table.at(name, `{${row}}`);
  const piles = new Table(
    "Piles",
    {
      mark: (p) => p.mark,
      rigName: (p) => p.rig,
      typeName: (p) => p.type,
      criterionName: (p) => p.criterion,
      load: (p) => number(p.workingLoad),
      platform: (p) => number(p.platform),
      toe: (p) => number(p.founding),
      cutoff: (p) => number(p.cutoff),
      rig: `MATCH({rigName},${rigs.range("id")},0)`,
      type: `MATCH({typeName},${types.range("id")},0)`,
      criterion: `MATCH({criterionName},${criteria.range("id")},0)`,
      area: of(rigs, "area", "rig"),
      onHead: of(rigs, "onHead", "rig"),
      low: of(rigs, "low", "rig"),
      high: of(rigs, "high", "rig"),
      division: of(rigs, "division", "rig"),
      setLoad: `${of(criteria, "factor", "criterion")}*{load}`,
      set: up("({setLoad}-{onHead})/({low}*{area})", "{division}"),
      loadAtSet: "{low}*{area}*{set}+{onHead}",
      mostAtSet: "{high}*{area}*{set}+{onHead}",
      circuitLimit: of(rigs, "pressure", "rig"),
      pileLimit: of(types, "limit", "type"),
      reactionLimit: of(rigs, "reaction", "rig"),
      gaugeLimit: of(rigs, "gaugeLimit", "rig"),
      circuitReading: down("{circuitLimit}", "{division}"),
      pileReading: down("({pileLimit}-{onHead})/({high}*{area})", "{division}"),
      reactionReading: down("({reactionLimit}-{onHead})/({high}*{area})", "{division}"),
      gaugeReading: down("{gaugeLimit}", "{division}"),
      circuitUse: "{set}/{circuitLimit}",
      pileUse: "{mostAtSet}/{pileLimit}",
      reactionUse: "{mostAtSet}/{reactionLimit}",
      gaugeUse: "{set}/{gaugeLimit}",
      never: "MIN({circuitReading}:{gaugeReading})",
      governs: "MATCH({never},{circuitReading}:{gaugeReading},0)",
      state: 'IF({set}<={never},"open","closed")',
      bars: of(types, "bars", "type"),
      headAtSet: `MAX({cutoff}+{bars},{platform}+${of(rigs, "grip", "rig")})`,
      need: "ROUNDUP(ROUND({headAtSet}-{toe},9),4)",
      pieces: `ROUNDUP(ROUND({need}/${longest},9),0)`,
      total: `{pieces}*${longest}`,
      offCut: "{total}-{need}",
      cost: "{offCut}+1*({pieces}-1)",
      heaviest: `${of(types, "perMetre", "type")}*${longest}`,
      head: "{toe}+{total}",
      above: "{head}-{cutoff}",
      saw: "{cutoff}+{bars}",
      sawAbove: "{saw}-{platform}",
      cut: "MAX(0,{above}-{bars})",
      short: "IF(AND({above}>=0,{above}<{bars}),{bars}-{above},0)",
      buildUp: `IF({above}<0,${of(types, "lap", "type")}-{above},0)`,
      headState: 'IF({above}<0,"build up",IF({above}>{bars},"to cut",IF({above}={bars},"at saw level","bars short")))',
    },
    list(now.piles).sort((a, b) => a.mark.localeCompare(b.mark, "en", { numeric: true })),
  );
  return { rigs, types, criteria, piles };
}

/** The sheets of a job, ready to be built; building is what opening them means. */
export function sheetsOf(now) {
  const all = tables(now);
  const cells = Object.fromEntries(Object.values(all).map((table) => [table.sheet, table.cells]));
  return { ...all, formulas: all.piles.cells[0].filter((cell) => String(cell).startsWith("=")).length, build: () => new Schedule(all, cells) };
}

class Schedule {
  constructor(all, cells) {
    this.tables = all;
    this.engine = HyperFormula.buildFromSheets(cells, { licenseKey: "gpl-v3" });
  }

  /** Types a number into the cell of a thing. */
  type(table, id, name, value) {
    const row = table.rows.findIndex((thing) => thing.id === id);
    this.engine.setCellContents({ sheet: this.engine.getSheetId(table.sheet), row, col: table.names.indexOf(name) }, value);
  }

  /** The values of the first rows of the piles. */
  read(count) {
    const sheet = this.engine.getSheetId("Piles");
    const { names } = this.tables.piles;
    return this.engine.getRangeValues({ start: { sheet, row: 0, col: 0 }, end: { sheet, row: count - 1, col: names.length - 1 } });
  }

  close() {
    this.engine.destroy();
  }
}
