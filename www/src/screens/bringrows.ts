// What a table would become: what the core asks about it, the rows as they were
// understood, and the one button that takes them.
import { html, nothing, svg, type TemplateResult } from "lit-html";
import { live } from "lit-html/directives/live.js";
import { readOnly } from "../signals.ts";
import { answerTo, only, preview, take, taking } from "./bringstate.ts";
import { differences } from "./compare.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { pager } from "./pager.ts";
import { link, replace } from "./route.ts";
import { minus } from "./symbols.ts";
import type { Import, ImportRow, ImportState } from "./views.ts";

type Shown = TemplateResult | typeof nothing;

/** As many rows as one answer of the core holds. */
const most = 20;

export function bringRowsScreen(doc: string, page: number): TemplateResult {
  const now = preview(doc, page * most);
  return frame({
    name: "bring-rows",
    over: label("bring.title"),
    title: label("bring.look"),
    doc,
    body: now === null ? none(doc) : now === undefined ? html`<p class="lead" role="status">${label("bring.reading")}</p>` : now.ok ? body(doc, page, now) : refused(now),
  });
}

/** Without a table there is nothing to look at. */
export function none(doc: string): TemplateResult {
  return html`<p class="lead">${label("bring.none")}</p>
    <div class="acts"><a class="button" href=${link("bring", doc)}>${label("bring.title")}</a></div>`;
}

function refused({ says, complaints }: Import): TemplateResult {
  const line = complaints?.[0]?.line;
  return html`<p class="lead">${label("bring.unread")}</p>
    <p>${line ? label("bring.line", { line: `${line}`, says: says ?? "" }) : (says ?? "")}</p>`;
}

function body(doc: string, page: number, now: Import): TemplateResult {
  const { counts } = now;
  return html`${now.encodingSays ? html`<p class="hint">${now.encodingSays}</p>` : nothing} ${question(now)} ${problems(doc, now)}
    ${settled(now)
      ? html`<dl class="facts brought-counts">${(["new", "changed", "unchanged", "refused"] as const).map((state) => html`<div><dt>${label(`bring.${state}`)}</dt><dd>${counts[state]}</dd></div>`)}</dl>`
      : nothing}
    <div class="acts">
      ${settled(now) ? takeAct(doc, now) : nothing}
      <a class="button" href=${link("bring-columns", doc)}>${label("bring.columns")}</a>
      ${settled(now) ? leaves(now) : nothing}
    </div>
    ${settled(now) && counts.rows > 0 ? rows(doc, page, now) : nothing}`;
}

/** Nothing is left to be asked or put right before rows can be taken. */
function settled({ questions, problems }: Import): boolean {
  return questions.length + problems.length === 0;
}

/** One question at a time. */
function question(now: Import): Shown {
  const [first] = now.questions;
  if (!first) return nothing;
  return html`<div class="band table-question" role="alert">
    ${now.questions.length > 1 ? html`<p class="over">${label("bring.questions", { count: `${now.questions.length}` })}</p>` : nothing}
    <p>${minus(first.says)}</p>
    <div class="band-acts">${first.offers.map(({ value, label: says }) => html`<button type="button" @click=${() => answerTo(first, value)}>${minus(says)}</button>`)}</div>
  </div>`;
}

/** What only the columns can put right; a choice of separators is asked for above. */
function problems(doc: string, { problems, questions }: Import): Shown {
  if (problems.length === 0 || questions.some(({ kind }) => kind === "separator")) return nothing;
  return html`<div class="band" role="alert">
    ${problems.map((says) => html`<p>${says}</p>`)}
    <div class="band-acts"><a class="button" href=${link("bring-columns", doc)}>${label("bring.choose")}</a></div>
  </div>`;
}

function takeAct(doc: string, now: Import): TemplateResult {
  const taken = now.counts.new + now.counts.changed;
  return html`<button type="button" class="main-act" ?disabled=${readOnly.value || taking.value || taken === 0} @click=${() => void take(doc, now)}>
    ${taking.value ? label("bring.taking") : label(taken === 1 ? "bring.take.one" : "bring.take", { count: `${taken}` })}
  </button>`;
}

/** The button says what it takes, this line what it leaves. */
function leaves({ counts }: Import): Shown {
  const left = [
    counts.refused > 0 ? label(counts.refused === 1 ? "bring.leaves.one" : "bring.leaves", { count: `${counts.refused}` }) : "",
    counts.skipped > 0 ? label(counts.skipped === 1 ? "bring.skips.one" : "bring.skips", { count: `${counts.skipped}` }) : "",
  ].filter((one) => one !== "");
  return left.length > 0 ? html`<p class="brought-left">${left.join(" ")}</p>` : nothing;
}

function rows(doc: string, page: number, now: Import): TemplateResult {
  return html`<div class="field">
      <label for="only">${label("bring.only")}</label>
      <select id="only" class="box" @change=${(event: Event) => { only.value = (event.target as HTMLSelectElement).value; if (page > 0) replace("bring-rows", doc); }}>
        ${["", "refused", "changed", "new", "unchanged"].map((one) => html`<option value=${one} .selected=${live(one === only.value)}>${label(one === "" ? "bring.all" : `bring.${one}`)}</option>`)}
      </select>
    </div>
    ${now.rows.length === 0 ? html`<p class="lead">${label("bring.norows")}</p>` : nothing}
    <ul class="brought">${now.rows.map((row) => oneRow(now, row))}</ul>
    ${pager(["bring-rows", doc], page, now.from, now.rows.length, now.rowCount, most)}`;
}

function oneRow(now: Import, row: ImportRow): TemplateResult {
  const cells = row.state === "unchanged" || row.state === "changed" ? [] : row.cells.filter(({ column, says }) => says !== "" && now.columns[column]?.field !== "mark");
  return html`<li>
    <div class="brought-head">
      <h2>${row.mark || label("thing.unnamed")}</h2>
      <p class="brought-state">${mark(row.state)} ${row.stateSays}</p>
      <p class="over">${label("bring.at", { line: `${row.line}` })}</p>
    </div>
    ${row.problems.map((says) => html`<p class="brought-problem">${minus(says)}</p>`)} ${row.warnings.map((says) => html`<p class="brought-warning">${says}</p>`)}
    ${row.changes.length > 0 ? differences(row.changes) : nothing}
    ${cells.length > 0
      ? html`<dl class="brought-cells">
          ${cells.map(({ column, says, problem }) => html`<div class=${problem ? "bad" : ""}><dt>${now.columns[column]?.label ?? ""}</dt><dd>${minus(says)}</dd></div>`)}
        </dl>`
      : nothing}
  </li>`;
}

const shapes: Record<ImportState, string> = {
  new: "M3 10H17M10 3V17",
  changed: "M2 10H17M11 4L17 10L11 16",
  unchanged: "M3 7H17M3 13H17",
  refused: "M4 4L16 16M16 4L4 16",
};

/** The state of a row as a shape, beside its words. */
function mark(state: ImportState): TemplateResult {
  return html`<svg class="state-mark" width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">${svg`<path d=${shapes[state]}></path>`}</svg>`;
}
