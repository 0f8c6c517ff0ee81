// The limits that must not be exceeded: each entered, waived or missing, with
// its own reading, and which of them governs.
import { html, nothing, svg, type TemplateResult } from "lit-html";
import { view } from "./data.ts";
import { formField } from "./fields.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { number } from "./number.ts";
import { link } from "./route.ts";
import { minus } from "./symbols.ts";
import { trialArgs, tries } from "./trial.ts";
import type { Limit, Sizing } from "./views.ts";

export function limitsScreen(doc: string, pile: string | undefined): TemplateResult {
  const sizing = view<Sizing>(doc, "sizing", pile ? { pile, ...trialArgs(doc, pile) } : {});
  return frame({
    name: "limits",
    ...(tries(doc, pile).length > 0 ? { over: label("trial.title") } : {}),
    title: label("row.limits"),
    doc,
    body: sizing?.ok ? html`${guardField(doc, pile, sizing)}${limitList(doc, pile, sizing.limits)}` : html`<p class="lead">${sizing?.says ?? label("core.starting")}</p>`,
  });
}

/** The guard is the job's, not the pile's: it is no part of a trial. */
function guardField(doc: string, pile: string | undefined, sizing: Sizing): unknown {
  if (!sizing.guard || tries(doc, pile).length > 0) return nothing;
  return html`<section class="fields">${formField({ doc, show: { view: "sizing", ...(pile ? { pile } : {}) } }, sizing.guard, "guard")}</section>`;
}

export function limitList(doc: string, pile: string | undefined, limits: Limit[]): TemplateResult {
  return html`<ul class="limit-list">
    ${limits.map((limit) => oneLimit(doc, pile, limit))}
  </ul>`;
}

function oneLimit(doc: string, pile: string | undefined, limit: Limit): TemplateResult {
  return html`<li class="limit ${limit.state} ${limit.governs ? "governs" : ""}">
    <div class="limit-head">
      ${mark(limit)}
      <h2>${limit.label}</h2>
      ${limit.use ? html`<p class="limit-use">${number(doc, pile, limit.use)}<span class="over">${label("limit.use")}</span></p>` : nothing}
      <p class="limit-state">${limit.stateSays}${limit.governs ? html` <strong class="tag">${label("limit.governs")}</strong>` : nothing}</p>
    </div>
    ${limit.value || limit.reading
      ? html`<dl class="figures">
          ${figure(label("limit.value"), number(doc, pile, limit.value))} ${figure(label("limit.reading"), number(doc, pile, limit.reading))}
        </dl>`
      : nothing}
    ${limit.parts.length
      ? html`<p class="over">${label("limit.parts")}</p>
          ${limit.parts.map((part) => html`<div class="line ${part.least ? "least" : ""}"><span class="line-label">${part.label}</span><span class="line-value">${number(doc, pile, part.value)}</span></div>`)}`
      : nothing}
    ${limit.also.map(
      (state) => html`<p class="over">${state.label}</p>
        <dl class="figures">${figure(label("limit.value"), number(doc, pile, state.value))} ${figure(label("limit.reading"), number(doc, pile, state.reading))}</dl>`,
    )}
    ${limit.notes.map((note) => html`<p class="limit-says">${minus(note)}</p>`)}
    ${limit.says ? html`<p class="limit-says">${minus(limit.says)}</p>` : nothing}
    <div class="acts">
      ${limit.fields.length === 0 ? html`<a class="button" href=${pile ? link(pickerOf(limit), doc, pile) : link(pickerOf(limit), doc)}>${label(pickerOf(limit) === "pick-pile" ? "limit.pick.pile" : "limit.pick.rig")}</a>` : nothing}
      ${limit.fields.map((form) => html`<a class="button" href=${link("form", doc, form.path)}>${form.label}</a>`)}
    </div>
  </li>`;
}

function figure(name: string, shown: unknown): unknown {
  return shown === nothing ? nothing : html`<div><dt>${name}</dt><dd>${shown}</dd></div>`;
}

/** Where nothing is chosen yet, the choice comes first. */
function pickerOf(limit: Limit): string {
  return limit.kind === "pile" ? "pick-pile" : "pick-rig";
}

/** Entered: a filled square; waived: a square struck through; missing: an open one; not checked: a small one. */
function mark(limit: Limit): TemplateResult {
  return html`<svg class="limit-mark" width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">
    ${limit.state === "unchecked"
      ? svg`<rect class="hollow" x="6" y="6" width="8" height="8"></rect>`
      : svg`<rect class=${limit.state === "entered" ? "full" : "hollow"} x="2" y="2" width="16" height="16"></rect>`}
    <path class="strike" d=${limit.state === "waived" ? "M2 18L18 2" : ""}></path>
  </svg>`;
}
