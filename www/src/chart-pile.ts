// A pile to scale, depth downward: levels as ruled lines, segments between
// their joints. Fractions of the drawn height only.
import { html, svg, type TemplateResult } from "lit-html";
import { minus } from "./screens/symbols.ts";

const height = 380;
const pad = 24;
const left = 14;
const wide = 68;
const right = left + wide;

interface Drawing {
  levels: { kind: string; label: string; says: string; at: number }[];
  pieces: { from: number; to: number; says: string }[];
}

export function pileDrawing(drawing: Drawing, title: string): TemplateResult {
  const y = (at: number) => pad + at * (height - 2 * pad);
  return html`<svg class="pile-drawing" width="100%" height=${height} role="img" aria-label=${title}>
    ${drawing.pieces.map(
      (one) => svg`<g><rect class="segment" x=${left} width=${wide} y=${y(one.from)} height=${Math.max(0, y(one.to) - y(one.from))}></rect>
        <text class="segment-text" x=${left + wide / 2} text-anchor="middle" y=${(y(one.from) + y(one.to)) / 2 + 6}>${one.says}</text></g>`,
    )}
    ${apart(drawing.levels.map((one) => ({ ...one, y: y(one.at) }))).map(
      (one) => svg`<g class=${one.kind}><path class="level" d=${`M0 ${one.y}H${left}M${right} ${one.y}H${right + 34}L${right + 48} ${one.words}`}></path>
        <text class="level-text" x=${right + 54} y=${one.words + 6}>${one.label} ${minus(one.says)}</text></g>`,
    )}
  </svg>`;
}

/** Words of levels that lie close together are spread, each led to its line. */
function apart<T extends { y: number }>(levels: T[]): (T & { words: number })[] {
  let least = 8;
  return [...levels]
    .sort((a, b) => a.y - b.y)
    .map((one) => {
      const words = Math.max(one.y, least);
      least = words + 24;
      return { ...one, words };
    });
}
