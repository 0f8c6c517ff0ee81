// Which part of the ground beside a pile is which, depth downward: a band for
// each, told apart by its hatch, with its words beside it. A part is as high as
// its share of the drawing, or as its words need.
import { html, nothing, type TemplateResult } from "lit-html";
import { ref } from "lit-html/directives/ref.js";
import type { Zone } from "./screens/views.ts";

/** Dug away: sparse strokes; settling: broken lines; staying: crossed. */
const hatches = { dug: "M0 12L12 0", settles: "M1 6H8", stays: "M0 0L12 12M0 12L12 0" };
/** Beside the shaft: drag down, resistance up. */
const arrows = { dug: "", settles: "M19 -14V12M13 4L19 12L25 4M73 -14V12M67 4L73 12L79 4", stays: "M19 14V-12M13 -4L19 -12L25 -4M73 14V-12M67 -4L73 -12L79 -4" };

export function groundSketch(zones: Zone[] | undefined): TemplateResult | typeof nothing {
  if (!zones) return nothing;
  return html`<div class="ground">
    ${zones.map(
      (one) => html`<div class="zone" ${ref((e) => e instanceof HTMLElement && e.style.setProperty("--part", `${one.to - one.from}`))}>
        <svg width="92" aria-hidden="true">
          <pattern id="ground-${one.kind}" width="12" height="12" patternUnits="userSpaceOnUse"><path d=${hatches[one.kind]}></path></pattern>
          <rect width="92" height="100%" fill="url(#ground-${one.kind})"></rect>
          <rect class="segment" x="31" y="-2" width="30" height=${one.to < 1 ? "110%" : "86%"}></rect>
          <svg y="50%" overflow="visible"><path class="arrow" d=${arrows[one.kind]}></path><text x="46" y="6" text-anchor="middle">${one.letter}</text></svg>
        </svg>
        <p><strong>${one.title}</strong></p>
        <p>${one.says}</p>
      </div>`,
    )}
  </div>`;
}
