// Groups of labelled numbers, as the core sends them for a pile or a sheet.
import { html, nothing, svg, type TemplateResult } from "lit-html";
import { percent } from "../chart-gauge.ts";
import { groundSketch } from "../chart-ground.ts";
import { chevron } from "./chevron.ts";
import { number } from "./number.ts";
import { link } from "./route.ts";
import { minus } from "./symbols.ts";
import type { Group, Way } from "./views.ts";

export function groupPart(doc: string, pile: string | undefined, group: Group): TemplateResult {
  return html`<section class="group ${group.page ? "own-page" : ""} ${group.quiet ? "quiet" : ""}">
    ${group.title ? html`<h2>${group.title}</h2>` : nothing}
    ${group.says ? html`<p class="group-says">${minus(group.says)}</p>` : nothing}
    ${group.plot?.length ? plot(group.plot, group.plotSays ?? "") : nothing}
    ${group.lines.filter((line) => line.value || line.says).map((line) => lineOf(doc, pile, line))}
    ${groundSketch(group.sketch)}
    ${group.notes.length
      ? html`<ul class="lines">
          ${group.notes.map((note) => html`<li>${minus(note)}</li>`)}
        </ul>`
      : nothing}
    ${group.links?.length ? ways(doc, group.links) : nothing}
  </section>`;
}

function lineOf(doc: string, pile: string | undefined, line: Group["lines"][number]): TemplateResult {
  return html`<div class="line ${line.value ? "" : "wordy"}">
    <span class="line-label">${line.label}</span>
    ${line.value ? html`<span class="line-value">${number(doc, pile, line.value)}</span>` : nothing}
    ${line.bar === undefined ? nothing : bar(line.bar, line.barSays ?? "")}
    ${line.says ? html`<span class="line-says">${minus(line.says)}</span>` : nothing}
  </div>`;
}

export function ways(doc: string, list: Way[]): TemplateResult {
  const to = (way: Way) => (way.sheet ? link("sheet", doc, way.sheet, "0", way.of ?? "") : link("form", doc, way.path));
  return html`<div class="links">${list.map((way) => html`<a class="row opening" href=${to(way)}><span class="row-says">${way.label}</span>${chevron()}</a>`)}</div>`;
}

/** A part of the whole, as a bar with its number. */
function bar(part: number, says: string): TemplateResult {
  return html`<span class="share"><svg width="100%" height="14" aria-hidden="true"><rect class="share-frame" x="0.5" y="0.5" width="99.5%" height="13"></rect><rect class="share-part" width=${percent(part)} height="14"></rect></svg><span>${says}</span></span>`;
}

/** Points about a middle line; a marked one is ringed as well. */
function plot(points: NonNullable<Group["plot"]>, title: string): TemplateResult {
  const high = 120;
  return html`<svg class="plot" width="100%" height=${high} role="img" aria-label=${title}>
    <line class="plot-zero" x1="0" x2="100%" y1=${high / 2} y2=${high / 2}></line>
    ${points.map((point) => {
      const x = percent(0.03 + point.x * 0.94);
      const y = high / 2 - point.y * (high / 2 - 12);
      return svg`<line class="plot-stem" x1=${x} x2=${x} y1=${high / 2} y2=${y}></line><circle class="plot-point" cx=${x} cy=${y} r="5"></circle>${point.marked ? svg`<circle class="plot-ring" cx=${x} cy=${y} r="10"></circle>` : nothing}`;
    })}
  </svg>`;
}
