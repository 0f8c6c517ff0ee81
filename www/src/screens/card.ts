// The cabin card: every reading that may be seen, with the load it means. On
// paper it is one page that hangs beside the gauge.
import { html, nothing, type TemplateResult } from "lit-html";
import { view } from "./data.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { number } from "./number.ts";
import { minus } from "./symbols.ts";
import type { Card, CardRow } from "./views.ts";

/** So many rows stand below one another on paper; more go into a second column. */
const rowsAColumn = 30;
/** So few rows leave room for larger ones. */
const rowsToFill = 16;

export function cardScreen(doc: string, pile: string): TemplateResult {
  const card = view<Card>(doc, "card", { pile });
  return frame({
    name: "card",
    over: card?.ok ? card.title : label("card.title"),
    title: card?.ok ? `${label("card.title")}: ${card.mark}` : label("card.title"),
    doc,
    body: card?.ok ? body(doc, pile, card) : html`<p class="lead">${card?.says ?? label("core.starting")}</p>`,
  });
}

function body(doc: string, pile: string, card: Card): TemplateResult {
  if (card.rows.length === 0) {
    return html`<p class="large">${label("card.none")}</p>
      <p class="lead">${card.big}</p>
      <ul class="lines">${card.reasons.map((line) => html`<li>${minus(line)}</li>`)}</ul>`;
  }
  const columns = card.rows.length > rowsAColumn ? Math.ceil(card.rows.length / Math.ceil(card.rows.length / rowsAColumn)) : rowsAColumn;
  const tables: CardRow[][] = [];
  for (let from = 0; from < card.rows.length; from += columns) tables.push(card.rows.slice(from, from + columns));
  return html`<dl class="facts card-facts">${card.facts.map((fact) => html`<div><dt>${fact.label}</dt><dd>${minus(fact.says)}</dd></div>`)}</dl>
    <div class="card-tables ${tables.length > 1 ? "two" : card.rows.length <= rowsToFill ? "few" : ""}">${tables.map((rows) => table(doc, pile, card.columns, rows))}</div>
    <div class="card-foot">
      <ul class="lines">
        ${card.voids.map((line) => html`<li>${line}</li>`)}
      </ul>
      <ul class="cautions">
        ${card.cautions.map((line) => html`<li>${line}</li>`)}
      </ul>
    </div>
    <div class="acts"><button type="button" class="main-act" @click=${() => print()}>${label("print")}</button></div>`;
}

function table(doc: string, pile: string, names: string[], rows: CardRow[]): TemplateResult {
  return html`<table class="card-table">
    <thead>
      <tr>
        ${names.map((name) => html`<th scope="col">${name}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        (row) => html`<tr class=${row.never ? "never" : row.set ? "at-set" : ""}>
            ${row.cells.map((cell, i) => (i === 0 ? html`<th scope="row">${number(doc, pile, cell)}</th>` : html`<td>${number(doc, pile, cell)}</td>`))}
          </tr>
          ${row.mark ? html`<tr class="mark-row ${row.never ? "never" : "at-set"}"><td colspan=${names.length}><strong>${row.mark}</strong></td></tr>` : nothing}`,
      )}
    </tbody>
  </table>`;
}
