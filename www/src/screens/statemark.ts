// The state of a pile as a shape, beside its words.
import { html, type TemplateResult } from "lit-html";
import type { State } from "./views.ts";

const shapes: Record<State, string> = {
  // an open gap between two bars
  open: "M4 3H8V17H4ZM12 3H16V17H12Z",
  // two bars pressed together, crossed
  closed: "M3 3L17 17M17 3L3 17",
  // one bar of two
  "limit missing": "M4 3H8V17H4ZM14 3V6M14 9V11M14 14V17",
  // a row of dots
  incomplete: "M3 10H5M9 10H11M15 10H17",
  refused: "M3 10H17M10 3V17M5 5L15 15",
};

export function stateMark(state: State): TemplateResult {
  return html`<svg class="state-mark" width="20" height="20" viewBox="0 0 20 20" aria-hidden="true"><path d=${shapes[state] ?? shapes.incomplete}></path></svg>`;
}
