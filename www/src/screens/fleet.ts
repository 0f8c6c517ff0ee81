// The piles of a job against the circuits of its rigs: which can set which,
// with how much ballast, and what stops the rest. A tap tries it.
import { html, type TemplateResult } from "lit-html";
import { view } from "./data.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { link } from "./route.ts";
import { pager, rowsAPage } from "./pager.ts";
import { minus } from "./symbols.ts";
import { tryBerth } from "./trial.ts";
import type { Fleet, FleetCell } from "./views.ts";

export function fleetScreen(doc: string, page: number): TemplateResult {
  const fleet = view<Fleet>(doc, "fleet", { from: page * rowsAPage, count: rowsAPage });
  return frame({
    name: "fleet",
    over: fleet?.ok ? fleet.title : "",
    title: label("fleet.title"),
    doc,
    body: fleet?.ok ? body(doc, page, fleet) : html`<p class="lead">${fleet?.says ?? label("core.starting")}</p>`,
  });
}

function body(doc: string, page: number, fleet: Fleet): TemplateResult {
  if (fleet.columns.length === 0) return html`<p class="lead">${label("fleet.none")}</p>`;
  return html`<dl class="facts">
      ${fleet.columns.map((column) => html`<div><dt>${column.name}</dt><dd>${column.says}</dd></div>`)}
    </dl>
    ${fleet.rows.map(
      (row) => html`<section class="fleet-pile">
        <h2>${row.mark}</h2>
        ${row.cells.map((cell) => berth(doc, row.id, cell))}
      </section>`,
    )}
    ${pager(["fleet", doc], page, fleet.from, fleet.rows.length, fleet.count)}
    <div class="acts"><button type="button" @click=${() => print()}>${label("print")}</button></div>`;
}

function berth(doc: string, pile: string, cell: FleetCell): TemplateResult {
  const tried = (event: Event) => {
    event.preventDefault();
    void tryBerth(doc, pile, cell.rig, cell.circuit);
  };
  return html`<a class="berth ${cell.state}" href=${link("size", doc, pile)} @click=${tried}>
    ${mark(cell.state)}
    <span class="berth-name">${cell.name}${cell.chosen ? html` <span class="tag">${label("fleet.chosen")}</span>` : ""}</span>
    <span class="berth-says">${minus(cell.says)}</span>
  </a>`;
}

/** Sets: a full disc; with ballast: half of one; stopped: a bar; not known: dots. */
function mark(state: FleetCell["state"]): TemplateResult {
  const shapes: Record<FleetCell["state"], string> = {
    sets: "M10 2A8 8 0 0 1 10 18A8 8 0 0 1 10 2Z",
    ballast: "M2 10A8 8 0 0 0 18 10Z",
    stopped: "M3 8H17V12H3Z",
    unknown: "M3 9H5V11H3ZM9 9H11V11H9ZM15 9H17V11H15Z",
  };
  return html`<svg class="state-mark berth-mark" width="20" height="20" viewBox="0 0 20 20" aria-hidden="true"><path d=${shapes[state]}></path></svg>`;
}
