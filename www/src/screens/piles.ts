// The piles of a job: a few with all that is known of each, a page at a time,
// which is also the sheet to print; many as one list of single lines.
import { signal } from "@preact/signals-core";
import { html, nothing, type TemplateResult } from "lit-html";
import { live } from "lit-html/directives/live.js";
import { readOnly } from "../signals.ts";
import { enter, view, type Args } from "./data.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { number } from "./number.ts";
import { pager, rowsAPage } from "./pager.ts";
import { firstBlock, pileRows, toTop } from "./pilerows.ts";
import { go, link, replace } from "./route.ts";
import { stateMark } from "./statemark.ts";
import { minus } from "./symbols.ts";
import type { PileRow, Piles, State } from "./views.ts";

/** Without a page many piles are one list. */
export function pilesScreen(doc: string, page?: number): TemplateResult {
  const chosen = { ...(find.value === "" ? {} : { find: find.value }), ...(state.value === "" ? {} : { state: state.value }) };
  const piles = page === undefined ? firstBlock(doc, chosen) : view<Piles>(doc, "piles", { from: page * rowsAPage, count: rowsAPage, ...chosen });
  const shown = piles?.ok ? piles : last?.doc === doc && piles === undefined ? last.piles : undefined;
  if (shown) last = { doc, piles: shown };
  const long = page === undefined && (shown?.all ?? 0) > rowsAPage;
  return frame({
    name: long ? "piles long" : "piles",
    over: shown ? shown.title : "",
    title: label("piles.title"),
    doc,
    actions: html`<a class="button" href=${link("job", doc)}>${label("piles.job")}</a>`,
    body: shown ? html`${shown.all > fewPiles ? search(doc, page) : nothing}${long ? many(doc, chosen, shown) : list(doc, page ?? 0, shown)}` : html`<p class="lead">${piles?.says ?? label("core.starting")}</p>`,
  });
}

/** Shown while the answer to another choice is under way, so that the list and its scroller stay. */
let last: { doc: string; piles: Piles } | undefined;

/** Lists this short need no search. */
const fewPiles = 5;

const find = signal("");
const state = signal("");
const states: readonly State[] = ["open", "closed", "limit missing", "incomplete", "refused"];

function search(doc: string, page: number | undefined): TemplateResult {
  // A replaced address draws the screen anew, and the box would lose the focus.
  const first = () => (page === undefined ? toTop() : page > 0 && replace("piles", doc, "0"));
  return html`<div class="search" role="search">
    <label for="find" class="over">${label("piles.find")}</label>
    <label for="state" class="over">${label("piles.only")}</label>
    <input id="find" class="box" type="search" autocomplete="off" autocapitalize="off" spellcheck="false" .value=${live(find.value)}
      @input=${(event: Event) => { find.value = (event.target as HTMLInputElement).value; first(); }} />
    <select id="state" class="box" @change=${(event: Event) => { state.value = (event.target as HTMLSelectElement).value; first(); }}>
      <option value="" .selected=${live(state.value === "")}>${label("piles.any")}</option>
      ${states.map((one) => html`<option value=${one} .selected=${live(one === state.value)}>${label(`state.${one}`)}</option>`)}
    </select>
  </div>`;
}

function many(doc: string, chosen: Args, piles: Piles): TemplateResult {
  return html`${piles.count === 0
      ? html`<p class="lead pile-rows">${label("piles.nofind")}</p>`
      : html`<p class="pile-count" role="status">${piles.count === piles.all ? label("piles.count", { count: `${piles.all}` }) : label("piles.found", { count: `${piles.count}`, all: `${piles.all}` })}</p>
          ${pileRows(doc, chosen, piles.count)}`}
    <details class="list-acts">
      <summary>${label("piles.more")}</summary>
      ${acts(doc, html`<a class="button" href=${link("piles", doc, "0")}>${label("piles.sheet")}</a>`)}
    </details>`;
}

function list(doc: string, page: number, piles: Piles): TemplateResult {
  return html`${piles.rows.length === 0
      ? html`<p class="lead">${label(piles.all > 0 ? "piles.nofind" : "piles.none")}</p>`
      : html`<table class="pile-table">
          <thead>
            <tr>
              <th scope="col">${label("piles.mark")}</th>
              <th scope="col">${label("piles.state")}</th>
              <th scope="col" class="n">${label("reading.set")}</th>
              <th scope="col">${label("piles.segments")}</th>
              <th scope="col">${label("piles.head")}</th>
            </tr>
          </thead>
          <tbody>
            ${piles.rows.map((row) => oneRow(doc, row))}
          </tbody>
        </table>`}
    ${pager(["piles", doc], page, piles.from, piles.rows.length, piles.count)}
    ${acts(doc, html`<button type="button" @click=${() => print()}>${label("print")}</button>`)}`;
}

function acts(doc: string, toPrint: TemplateResult): TemplateResult {
  return html`<div class="acts">
      <button type="button" ?disabled=${readOnly.value} @click=${() => void addPile(doc)}>${label("piles.add")}</button>
      <a class="button" href=${link("plan", doc)}>${label("plan.title")}</a>
      <a class="button" href=${link("fleet", doc)}>${label("fleet.title")}</a>
      ${["cutting", "order", "lengths", "criteria"].map((name) => html`<a class="button" href=${link("sheet", doc, name)}>${label(`sheet.${name}`)}</a>`)}
      <a class="button" href=${link("bring", doc)}>${label("piles.bring")}</a>
      <a class="button" href=${link("hand-out", doc)}>${label("piles.handout")}</a>
      ${toPrint}
    </div>`;
}

function oneRow(doc: string, row: PileRow): TemplateResult {
  return html`<tr>
    <th scope="row" class="pile-mark"><a href=${link("pile", doc, row.id)}>${row.mark || label("thing.unnamed")}</a></th>
    <td class="pile-state">${stateMark(row.state)} <span>${row.stateSays}</span></td>
    <td class="n pile-set">${row.state === "open" ? number(doc, row.id, row.set) : html`<span class="none" aria-hidden="true">–</span>`}</td>
    <td class="pile-segments">${minus(row.segments || row.segmentsSay)}</td>
    <td class="pile-head">${minus(row.cutSays)}</td>
  </tr>`;
}

async function addPile(doc: string): Promise<void> {
  const { answer } = await enter(doc, { do: "add", what: "pile" }, undefined, 8);
  if (typeof answer["added"] === "string") go("form", doc, answer["added"]);
}
