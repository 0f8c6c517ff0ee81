// The table that is being brought in, and what was said about it. It lives as
// long as its screens are looked at; nothing of it is stored.
import { effect, signal } from "@preact/signals-core";
import * as host from "../host.ts";
import { uuidsInTurns, uuidv7 } from "../ids.ts";
import { enter, view, type Args } from "./data.ts";
import { label } from "./labels.ts";
import { notice } from "./notice.ts";
import { go, replace, route } from "./route.ts";
import type { Import, ImportQuestion } from "./views.ts";

interface Held {
  doc: string;
  table: host.Table;
}

/** Answers to the core's questions, as it takes them. */
interface Said {
  separator?: string;
  header?: number;
  sign?: string;
  columns: Record<string, string>;
  units: Record<string, string>;
  defaults: Record<string, string>;
}

const nothingSaid: Said = { columns: {}, units: {}, defaults: {} };

const held = signal<Held | null>(null);
const said = signal<Said>(nothingSaid);
/** What stands in the box, which is kept while the screens are looked at. */
export const written = signal("");
/** The state of the rows that are shown; "" for all. */
export const only = signal("");
/** The entry is under way. */
export const taking = signal(false);

const screens = ["bring", "bring-rows", "bring-columns"];

/** Drops the table when its screens are left, and has the browser ask before what was typed is lost. */
export function watchTable(): void {
  effect(() => {
    if (!screens.includes(route.value[0] ?? "")) drop();
  });
  addEventListener("beforeunload", (event) => {
    if (written.peek().trim() !== "") event.preventDefault();
  });
}

function drop(): void {
  held.value = null;
  written.value = "";
}

/** Looks at a table before anything of it is taken. */
export function lookAtTable(doc: string, bytes: Uint8Array): void {
  held.value = { doc, table: { name: uuidv7(), bytes } };
  said.value = nothingSaid;
  only.value = "";
  last = null;
  go("bring-rows", doc);
}

/** A file dropped on a screen for tables is one. */
export function dropped(file: File): boolean {
  const [name = "", doc] = route.peek();
  if (!screens.includes(name) || doc === undefined) return false;
  void file.arrayBuffer().then((buffer) => lookAtTable(doc, new Uint8Array(buffer)));
  return true;
}

/** What was answered last, shown until the next answer is there. */
let last: { table: host.Table; answer: Import } | null = null;

/** The decimal sign that was said to be that of the table; "" while nobody said so. */
export function signSaid(): string {
  return said.value.sign ?? "";
}

/** Null: there is no table; undefined: it is being read. */
export function preview(doc: string, from: number): Import | null | undefined {
  const now = held.value;
  if (now?.doc !== doc) return null;
  // What is being taken is not looked at anew for every change it makes.
  if (taking.value && last?.table === now.table) return last.answer;
  const answer = view<Import>(doc, "import", { ...asArgs(said.value), from, only: only.value }, now.table);
  if (answer) last = { table: now.table, answer };
  return last?.table === now.table ? last.answer : undefined;
}

function asArgs(now: Said): Args {
  return { ...now };
}

/** One more thing is said; the rows are shown from the first again. */
export function say(more: Partial<Said>): void {
  said.value = { ...said.peek(), ...more };
}

export function sayOf(what: "columns" | "units" | "defaults", key: string, value: string): void {
  say({ [what]: { ...said.peek()[what], [key]: value } });
}

export function answerTo({ kind, column }: ImportQuestion, value: string): void {
  if (kind === "unit") sayOf("units", `${column}`, value);
  else say({ [kind]: value });
}

/** Takes what can be taken: the only thing here that changes the job. */
export async function take(doc: string, { ids, encoding }: Import): Promise<void> {
  const now = held.peek();
  if (now?.doc !== doc || taking.peek()) return;
  taking.value = true;
  try {
    const made = await uuidsInTurns(ids);
    const { answer } = await enter(doc, { do: "import", ...asArgs(said.peek()) }, undefined, made, inUtf8(now.table.bytes, encoding));
    if (!answer.ok) return;
    notice.value = label("bring.done", { says: answer.says ?? "" });
    // In a task of its own: the job has just grown by all its rows. Leaving drops the table.
    await new Promise((later) => setTimeout(later));
    replace("piles", doc);
  } finally {
    taking.value = false;
  }
}

/** What came with an entry is kept beside it as text. */
function inUtf8(bytes: Uint8Array, encoding: Import["encoding"]): Uint8Array {
  if (encoding === "UTF-8") return bytes;
  const from = encoding === "Windows-1252" ? "windows-1252" : bytes[0] === 0xfe ? "utf-16be" : "utf-16le";
  return new TextEncoder().encode(new TextDecoder(from).decode(bytes));
}
