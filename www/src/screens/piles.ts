// The piles of a job, a page of rows at a time. Also the sheet to print.
import { html, type TemplateResult } from "lit-html";
import { readOnly } from "../signals.ts";
import { enter, view } from "./data.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { number } from "./number.ts";
import { pager, rowsAPage } from "./pager.ts";
import { go, link } from "./route.ts";
import { stateMark } from "./statemark.ts";
import { minus } from "./symbols.ts";
import type { PileRow, Piles } from "./views.ts";

export function pilesScreen(doc: string, page: number): TemplateResult {
  const from = page * rowsAPage;
  const piles = view<Piles>(doc, "piles", { from, count: rowsAPage });
  const shown = piles?.ok ? piles : undefined;
  return frame({
    name: "piles",
    over: shown ? shown.title : "",
    title: label("piles.title"),
    doc,
    actions: html`<a class="button" href=${link("job", doc)}>${label("piles.job")}</a>`,
    body: shown ? list(doc, page, shown) : html`<p class="lead">${piles?.says ?? label("core.starting")}</p>`,
  });
}

function list(doc: string, page: number, piles: Piles): TemplateResult {
  return html`${piles.rows.length === 0
      ? html`<p class="lead">${label("piles.none")}</p>`
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
    <div class="acts">
      <button type="button" ?disabled=${readOnly.value} @click=${() => void addPile(doc)}>${label("piles.add")}</button>
      <a class="button" href=${link("fleet", doc)}>${label("fleet.title")}</a>
      <button type="button" @click=${() => print()}>${label("print")}</button>
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
