// The gauge line: full scale as a ruled line, the set as a pointer above it,
// and from never-exceed on a hatched zone. Fractions of full scale only.
import { nothing, svg, type SVGTemplateResult } from "lit-html";
import { html, type TemplateResult } from "lit-html";

const top = 16;
const depth = 20;

export function gaugeLine(bar: { set?: number | null; never?: number | null }, title: string): TemplateResult {
  return html`<svg class="gauge" width="100%" height="44" role="img" aria-label=${title}>
    <defs>
      <pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect class="hatch-ink" width="3" height="7"></rect>
      </pattern>
    </defs>
    ${bar.never == null ? nothing : zone(bar.never)}
    ${ticks()}
    <rect class="gauge-frame" x="0.5" y=${top} width="100%" height=${depth}></rect>
    ${bar.never == null ? nothing : stop(bar.never)} ${bar.set == null ? nothing : pointer(bar.set)}
  </svg>`;
}

export function percent(fraction: number): string {
  return `${(Math.min(1, Math.max(0, fraction)) * 100).toFixed(3)}%`;
}

function ticks(): SVGTemplateResult[] {
  return Array.from({ length: 11 }, (_, i) => svg`<line class="gauge-tick" x1=${percent(i / 10)} x2=${percent(i / 10)} y1=${top + (i % 5 === 0 ? 6 : 12)} y2=${top + depth}></line>`);
}

function zone(never: number): SVGTemplateResult {
  return svg`<rect class="gauge-stop" x=${percent(never)} y=${top} width=${percent(1 - never)} height=${depth} fill="url(#hatch)"></rect>`;
}

function stop(never: number): SVGTemplateResult {
  return svg`<line class="gauge-edge" x1=${percent(never)} x2=${percent(never)} y1=${top - 6} y2="44"></line>`;
}

function pointer(set: number): SVGTemplateResult {
  return svg`<svg class="gauge-set" x=${percent(set)} y="0" overflow="visible">
    <path d="M-9 1H9L0 ${top + 1}Z"></path>
    <line x1="0" x2="0" y1=${top} y2=${top + depth}></line>
  </svg>`;
}
