// What the core answers, as the screens need it. Numbers are text; the only
// numbers are counts and the fractions of a drawing.

export interface Says {
  says: string;
  unit: string;
  rounded?: string;
  open: string;
}

export interface Offer {
  label: string;
  typed: string;
  decimalSign?: string;
}

export interface Problem {
  says: string;
  offers?: Offer[];
}

export interface Choice {
  value: string;
  label: string;
}

export interface Field {
  path: string;
  label: string;
  kind: "quantity" | "text" | "choice" | "count" | "reference" | "lines";
  typed: string;
  unit: string;
  units?: string[];
  echo: string;
  state: "blank" | "given" | "not known" | "not applicable" | "unread";
  problem?: Problem | null;
  minus?: boolean;
  others?: Choice[];
  choices?: Choice[];
  hint?: string;
  basis?: { says: string; mark: string; open: string } | null;
  /** Copies state different values, and nobody has chosen. */
  contested?: boolean;
}

export type State = "incomplete" | "limit missing" | "closed" | "open" | "refused";

export interface Answered {
  ok: boolean;
  says?: string;
  code?: string;
}

export interface Efficiency {
  /** "Not calibrated": stands as large as a line can be. */
  head: string;
  says: string;
  /** The same as one of the notes, so that it is not said twice. */
  note: string;
  kind: string;
}

export interface Bar {
  set?: number | null;
  never?: number | null;
}

/** What the large place needs; the sizing and the pile both give it. */
export interface Readings {
  state: State;
  set: Says | null;
  never: Says | null;
  big: string;
  reasons: string[];
  ways: string[];
  notes: string[];
  efficiency: Efficiency | null;
  loadAtSet?: Says | null;
  loadSays?: string;
  holdSays?: string;
  /** Whether the readings keep the uncertainty away: always said. */
  guardSays?: string;
  bar?: Bar | null;
  /** How far the load may be off, and by which certificate. */
  doubt?: { says: string; pile: string } | null;
  /** The sentence about fields with two values, while there are any. */
  choicesSay?: string;
}

export interface SizingRow {
  id: "load" | "factor" | "rig" | "pile" | "limits";
  label: string;
  field?: Field;
  /** The form in which it is entered, where that is no box. */
  path?: string;
  says?: string;
  need?: string;
  bad?: boolean;
}

export interface Limit {
  kind: string;
  label: string;
  state: "entered" | "waived" | "missing" | "unchecked";
  stateSays: string;
  value: Says | null;
  reading: Says | null;
  use: Says | null;
  governs: boolean;
  says: string;
  /** Of which the least is the limit, where there are several. */
  parts: { label: string; value: Says; least: boolean }[];
  /** What holds for a while only, beside the limit. */
  also: { label: string; value: Says; reading: Says | null }[];
  notes: string[];
  required: boolean;
  /** The forms in which it is entered. */
  fields: { path: string; label: string }[];
}

export interface Sizing extends Readings, Answered {
  title: string;
  named: boolean;
  blank: boolean;
  rows: SizingRow[];
  limits: Limit[];
  last: string;
  cautions: string[];
  guard?: Field;
  /** What may also be tried on a pile of a job. */
  tries?: Field[];
  rig?: { id: string; circuit: string } | null;
  type?: string;
  pile?: string;
}

export interface KeptCircuit {
  id: string;
  name: string;
  says: string;
  ready: boolean;
  lacks?: string[];
}

export interface KeptRig {
  id: string;
  name: string;
  says: string;
  circuits: KeptCircuit[];
}

export interface KeptType {
  id: string;
  name: string;
  says: string;
}

export interface Kept extends Answered {
  rigs: KeptRig[];
  types: KeptType[];
}

/** A way on: to a form, or to a sheet about a thing. */
export interface Way {
  label: string;
  path: string;
  sheet?: string;
  of?: string;
}

/** Boxes whose text goes into a record at once; the units are printed beside them. */
export interface RecordBox {
  do: string;
  title: string;
  says: string;
  act: string;
  args: Record<string, string>;
  inputs: { name: string; label: string; unit: string; choices?: Choice[] }[];
}

export interface FormSection {
  title: string;
  fields: Field[];
  links?: Way[];
  adds?: { label: string; what: string; path?: string }[];
  sketch?: Zone[];
}

export interface Form extends Answered {
  title: string;
  name: string;
  sections: FormSection[];
  copy: boolean;
  strike: boolean;
  waiver: { limit: string; label: string; active: boolean; path: string; fields: Field[]; says: string } | null;
}

export interface PileRow {
  id: string;
  mark: string;
  type: string;
  rig: string;
  state: State;
  stateSays: string;
  set: Says | null;
  never: Says | null;
  segments: string;
  total: Says | null;
  segmentsSay: string;
  cutSays: string;
  cut: Says | null;
  headState: string;
  surveyed: boolean;
}

export interface Piles extends Answered {
  title: string;
  /** Piles of the job; count is how many were asked for by mark and state. */
  all: number;
  count: number;
  from: number;
  rows: PileRow[];
}

/** Fractions of the drawing; width and height are those of it [px]. */
export interface Plan extends Answered {
  title: string;
  width: number;
  height: number;
  piles: { id: string; mark: string; state: State; x: number; y: number; room: boolean }[];
  boxes: { x: number; y: number; wide: number; high: number; says: string; at: number; down: number }[];
  bar: { size: number; says: string } | null;
  lines: string[];
  states: { state: State; says: string }[];
  groups: { name: string; says: string }[];
}

export interface FleetCell {
  rig: string;
  circuit: string;
  name: string;
  state: "sets" | "ballast" | "stopped" | "unknown";
  says: string;
  /** The pile stands on this circuit. */
  chosen: boolean;
}

export interface Fleet extends Answered {
  title: string;
  count: number;
  from: number;
  columns: { rig: string; circuit: string; name: string; says: string }[];
  rows: { id: string; mark: string; cells: FleetCell[] }[];
}

/** Levels as fractions of the drawn height, 0 at the top, for drawing only. */
export interface Drawing {
  levels: { kind: string; label: string; says: string; at: number }[];
  pieces: { from: number; to: number; says: string }[];
}

/** A part of the ground beside a pile; from and to are fractions of the drawn height. */
export interface Zone {
  kind: "dug" | "settles" | "stays";
  from: number;
  to: number;
  letter: string;
  title: string;
  says: string;
}

export interface Group {
  title: string;
  says: string;
  notes: string[];
  lines: { label: string; value: Says | null; says: string; bar?: number; barSays?: string }[];
  links?: Way[];
  /** Points of a drawing: x from 0 to 1, y from -1 to 1. */
  plot?: { x: number; y: number; marked: boolean }[];
  plotSays?: string;
  /** Read at a desk: its sentences need not be large. */
  quiet?: boolean;
  /** Has a page of its own on paper. */
  page?: boolean;
  sketch?: Zone[];
}

/** A list of the whole job, to read and to print. */
export interface Sheet extends Answered {
  over: string;
  title: string;
  lead: string[];
  groups: Group[];
  count?: number;
  from?: number;
  fields?: Field[];
  boxes?: RecordBox[];
}

export interface Pile extends Readings, Answered {
  mark: string;
  stateSays: string;
  limits: Limit[];
  type: string;
  rig: string;
  headState: string;
  headSays: string;
  groups: Group[];
  survey: RecordBox;
  drawing: Drawing | null;
  fieldsPath: string;
  cautions: string[];
}

export interface Source {
  title?: string;
  document: string;
  edition: string;
  clause: string;
  mark: string;
  markLetter?: string;
}

export interface WorkingInput {
  symbol: string;
  name: string;
  says: string;
  open: string;
  kind: string;
}

export interface Working extends Answered {
  title: string;
  symbol: string;
  formula: string;
  values: string;
  result: string;
  shown: string;
  source: Source | null;
  inputs: WorkingInput[];
  proofs: { title: string; formula: string; says: string; holds: boolean }[];
  stated: { typed: string; conversion?: string; basis?: string; by?: string; at?: string; path?: string } | null;
}

/** One side of a gauge read both ways: loads at a reading, or readings for a load. */
export interface Conversion {
  typed: string;
  unit: string;
  units: string[];
  echo: string;
  says?: string;
  problem?: Problem;
  lines?: { label: string; value: Says }[];
  notes?: string[];
}

export interface Convert extends Answered {
  mark: string;
  rig: string;
  reading: Conversion;
  load: Conversion;
}

export interface CardRow {
  cells: Says[];
  set: boolean;
  never: boolean;
  /** In words, on the rows that matter most. */
  mark: string;
}

export interface Card extends Answered {
  title: string;
  mark: string;
  big: string;
  facts: { label: string; says: string }[];
  columns: string[];
  rows: CardRow[];
  voids: string[];
  reasons: string[];
  cautions: string[];
}

export interface Complaint {
  says: string;
  path: string;
  line: number | string;
  code: string;
}

export interface Info extends Answered {
  title: string;
  readOnly: boolean;
  /** The job's decimal sign, "" until somebody said it. */
  sign: string;
  changes: number;
  piles: number;
  choices?: number;
  damage?: string[];
  problems?: string[];
}

/** A value with who stated it, when, on which device and why. */
export interface Origin {
  says: string;
  who: string;
  device: string;
  at: string;
  why: string;
  sitting: string;
  s: number;
  /** As it stands in the file; of open choices only. */
  value?: string;
}

export interface Contested {
  path: string;
  label: string;
  simple: boolean;
  options: Origin[];
}

export interface Choices extends Answered {
  choices: Contested[];
  count: number;
}

export interface HistoryRow extends Origin {
  fields: { label: string; says: string }[];
}

export interface History extends Answered {
  label: string;
  count: number;
  rows: HistoryRow[];
}

export interface Difference {
  path: string;
  label: string;
  before: string;
  after: string;
}

export interface Compare extends Answered {
  differences: Difference[];
  count: number;
}

/** How a table of piles would be taken; see showImport in the core. */
export interface Import extends Answered {
  encoding: "UTF-8" | "UTF-16" | "Windows-1252";
  encodingSays: string;
  separator: string;
  separators: { separator: string; label: string; says: string }[];
  /** Line of the headers, 0 for none. */
  header: number;
  columns: ImportColumn[];
  fields: { field: string; label: string }[];
  choices: { field: string; label: string; chosen: string; choices: Choice[] }[];
  problems: string[];
  questions: ImportQuestion[];
  counts: Record<ImportState | "rows" | "skipped", number>;
  ids: number;
  rows: ImportRow[];
  from: number;
  rowCount: number;
  complaints?: Complaint[];
}

export interface ImportColumn {
  column: number;
  header: string;
  /** "" where the column is not read. */
  field: string;
  label: string;
  unit: string;
  needsUnit: boolean;
  units: string[];
  sample: string[];
}

export interface ImportQuestion {
  kind: "separator" | "unit" | "sign";
  column: number;
  line: number;
  says: string;
  offers: Choice[];
}

export type ImportState = "new" | "changed" | "unchanged" | "refused";

export interface ImportRow {
  line: number;
  mark: string;
  state: ImportState;
  stateSays: string;
  cells: { column: number; says: string; problem?: string }[];
  changes: { label: string; before: string; after: string }[];
  problems: string[];
  warnings: string[];
}

/** A job of one pile is worked on from the first screen. */
export function isSizing(info: Info): boolean {
  return info.piles === 1;
}
