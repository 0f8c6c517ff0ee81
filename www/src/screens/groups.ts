// Groups of labelled numbers, as the core sends them for a pile or a sheet.
import { html, nothing, type TemplateResult } from "lit-html";
import { number } from "./number.ts";
import { minus } from "./symbols.ts";
import type { Group } from "./views.ts";

export function groupPart(doc: string, pile: string | undefined, group: Group): TemplateResult {
  return html`<section class="group ${group.page ? "own-page" : ""}">
    <h2>${group.title}</h2>
    ${group.says ? html`<p class="group-says">${minus(group.says)}</p>` : nothing}
    ${group.lines.filter((line) => line.value || line.says).map((line) => lineOf(doc, pile, line))}
    ${group.notes.length
      ? html`<ul class="lines">
          ${group.notes.map((note) => html`<li>${minus(note)}</li>`)}
        </ul>`
      : nothing}
  </section>`;
}

function lineOf(doc: string, pile: string | undefined, line: Group["lines"][number]): TemplateResult {
  return html`<div class="line ${line.value ? "" : "wordy"}">
    <span class="line-label">${line.label}</span>
    ${line.value ? html`<span class="line-value">${number(doc, pile, line.value)}</span>` : nothing}
    ${line.says ? html`<span class="line-says">${minus(line.says)}</span>` : nothing}
  </div>`;
}
