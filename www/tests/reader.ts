// A second reader of job files, written from examples/FORMAT.md alone. It shares
// no code with the core: what both say of a file is compared by a test.
import { createHash } from "node:crypto";

export type Value = null | boolean | number | string | Value[] | { [name: string]: Value };
export type Members = { [name: string]: Value };

interface Entry {
  sitting: string;
  s: number;
  patch: Members;
}

interface Sitting {
  id: string;
  seen: Map<string, number>;
  entries: Entry[];
}

/** A field for which entries that have not seen one another state different values. */
export interface Choice {
  path: string;
  options: Value[];
}

function isMembers(value: Value | undefined): value is Members {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function membersOf(value: Value | undefined): Members {
  return isMembers(value) ? value : {};
}

function listOf(value: Value | undefined): Value[] {
  return Array.isArray(value) ? value : [];
}

/** The file as a value; a byte order mark is accepted. */
export function read(text: string): Members {
  const value = JSON.parse(text.replace(/^\uFEFF/, "")) as Value;
  if (!isMembers(value) || value["format"] !== "gaugewright job") throw new Error("not a job file");
  return value;
}

/** RFC 8785: names by UTF-16 code units, numbers and texts as ECMAScript writes them. */
export function canonical(value: Value): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(",")}]`;
  if (!isMembers(value)) return JSON.stringify(value);
  const names = Object.keys(value).sort((a, b) => (a < b ? -1 : 1));
  return `{${names.map((name) => `${JSON.stringify(name)}:${canonical(value[name]!)}`).join(",")}}`;
}

export function digest(value: Value): string {
  return createHash("sha256").update(canonical(value), "utf8").digest("hex");
}

/** RFC 7396. */
export function merged(target: Value | undefined, patch: Value): Value {
  if (!isMembers(patch)) return patch;
  const out: Members = { ...membersOf(target) };
  for (const [name, value] of Object.entries(patch)) {
    if (value === null) delete out[name];
    else out[name] = merged(out[name], value);
  }
  return out;
}

function byBytes(a: string, b: string): number {
  return Buffer.compare(Buffer.from(a), Buffer.from(b));
}

/** The sittings in the order in which their entries are taken. */
export function ordered(file: Members): Sitting[] {
  const waiting: Sitting[] = Object.entries(membersOf(file["sittings"])).map(([id, node]) => {
    const entries: Entry[] = [];
    for (const e of listOf(membersOf(node)["entries"]).map(membersOf)) {
      const s = Number(e["s"]);
      const last = entries.at(-1);
      if (!last || s > last.s) entries.push({ sitting: id, s, patch: membersOf(e["patch"]) });
    }
    const seen = Object.entries(membersOf(membersOf(node)["seen"])).filter(([, n]) => Number(n) > 0);
    return { id, seen: new Map(seen.map(([other, n]) => [other, Number(n)])), entries };
  });
  waiting.sort((a, b) => byBytes(a.id, b.id));
  const out: Sitting[] = [];
  while (waiting.length > 0) {
    const next = waiting.findIndex((one) => !waiting.some((other) => other !== one && one.seen.has(other.id)));
    if (next < 0) return [...out, ...waiting]; // each saw another: a cycle
    out.push(...waiting.splice(next, 1));
  }
  return out;
}

/** What all entries together state. */
export function fold(file: Members): Members {
  let now: Value = {};
  for (const sitting of ordered(file)) for (const entry of sitting.entries) now = merged(now, entry.patch);
  return membersOf(now);
}

function* fieldsOf(patch: Members, above = ""): Generator<[path: string, value: Value]> {
  for (const [name, value] of Object.entries(patch)) {
    const path = `${above}/${name.replaceAll("~", "~0").replaceAll("/", "~1")}`;
    if (isMembers(value)) yield* fieldsOf(value, path);
    else yield [path, value];
  }
}

/** How many entries of every other sitting each has seen, by itself and through those of which it has seen something. */
function sights(sittings: Sitting[]): Map<string, Map<string, number>> {
  const listed = new Map(sittings.map((one) => [one.id, one.seen]));
  const of = (id: string) => {
    const all = new Map<string, number>();
    const todo = [id];
    for (const at of todo) {
      for (const [other, n] of listed.get(at) ?? []) {
        if (other === at) continue;
        if (!all.has(other)) todo.push(other);
        all.set(other, Math.max(n, all.get(other) ?? 0));
      }
    }
    return all;
  };
  return new Map(sittings.map(({ id }) => [id, of(id)]));
}

/** The open fields, in the order in which they were first stated. */
export function choices(file: Members): Choice[] {
  const sittings = ordered(file);
  const seenBy = sights(sittings);
  const hasSeen = (a: Entry, b: Entry) =>
    a.sitting === b.sitting ? a.s > b.s : (seenBy.get(a.sitting)?.get(b.sitting) ?? 0) > b.s;
  const stated = new Map<string, { entry: Entry; value: Value }[]>();
  for (const { entries } of sittings) {
    for (const entry of entries) {
      for (const [path, value] of fieldsOf(entry.patch)) {
        stated.set(path, [...(stated.get(path) ?? []), { entry, value }]);
      }
    }
  }
  const open: Choice[] = [];
  for (const [path, list] of stated) {
    const count = list.filter((one) => !list.some((other) => hasSeen(other.entry, one.entry)));
    if (new Set(count.map((one) => canonical(one.value))).size > 1) {
      open.push({ path, options: count.map((one) => one.value) });
    }
  }
  return open;
}

/** Every line of a record with the number of columns declared for it. */
export function* linesOf(file: Members): Generator<{ line: string; columns: number; where: string }> {
  for (const [id, record] of Object.entries(membersOf(file["records"]))) {
    for (const [sitting, part] of Object.entries(membersOf(membersOf(record)["parts"]))) {
      const columns = String(membersOf(part)["columns"] ?? "").split(" ").length;
      for (const line of listOf(membersOf(part)["lines"])) yield { line: String(line), columns, where: `${id} ${sitting}` };
    }
  }
}

/** A file in our layout: one space a level, one line for what fits in 120 characters, lists of plain values in full lines. */
export function laidOut(value: Value): string {
  return `${layout(value, "", "")}\n`;
}

function oneLine(value: Value): string {
  if (Array.isArray(value)) return value.length === 0 ? "[]" : `[${value.map(oneLine).join(", ")}]`;
  if (!isMembers(value)) return escaped(value);
  const members = Object.entries(value);
  return members.length === 0 ? "{}" : `{ ${members.map(([n, v]) => `${escaped(n)}: ${oneLine(v)}`).join(", ")} }`;
}

function escaped(value: null | boolean | number | string): string {
  return JSON.stringify(value);
}

function filled(items: string[], indent: string): string[] {
  const lines: string[] = [];
  for (const item of items) {
    const longer = `${lines.at(-1) ?? ""}, ${item}`;
    if (lines.length > 0 && [...longer].length <= 120) lines[lines.length - 1] = longer;
    else lines.push(indent + item);
  }
  return lines;
}

function layout(value: Value, indent: string, name: string): string {
  const line = oneLine(value);
  if (!isMembers(value) && !Array.isArray(value)) return line;
  if (line.length <= 4 && /^(\[\]|\{\})$/.test(line)) return line;
  if ([...(indent + name + line)].length <= 120) return line;
  const deeper = `${indent} `;
  if (Array.isArray(value) && !value.some((v) => isMembers(v) || Array.isArray(v))) {
    return `[\n${filled(value.map(oneLine), deeper).join(",\n")}\n${indent}]`;
  }
  if (Array.isArray(value)) {
    return `[\n${value.map((v) => deeper + layout(v, deeper, "")).join(",\n")}\n${indent}]`;
  }
  const members = Object.entries(value).map(([n, v]) => {
    const before = `${escaped(n)}: `;
    return deeper + before + layout(v, deeper, before);
  });
  return `{\n${members.join(",\n")}\n${indent}}`;
}
