// Fields for which two copies state different values. Nobody has chosen yet,
// and nothing is computed with them until somebody does.
import { html, nothing, type TemplateResult } from "lit-html";
import { readOnly } from "../signals.ts";
import { enter, view } from "./data.ts";
import { chevron } from "./chevron.ts";
import { drop } from "./fieldstate.ts";
import { frame } from "./frame.ts";
import { byWhom, placeText, valueText } from "./history.ts";
import { label } from "./labels.ts";
import { link } from "./route.ts";
import type { Choices, Contested, Origin } from "./views.ts";

type Shown = TemplateResult | typeof nothing;

export function choicesScreen(doc: string): TemplateResult {
  const list = view<Choices>(doc, "choices");
  return frame({
    name: "open-choices",
    title: label("choices.title"),
    doc,
    body: list?.ok ? body(doc, list) : html`<p class="lead">${list?.says ?? label("core.starting")}</p>`,
  });
}

function body(doc: string, { choices, count }: Choices): TemplateResult {
  return html`<p class="lead">${label(count > 0 ? "choices.lead" : "choices.none")}</p>
    ${choices.map((one) => contested(doc, one))}
    ${choices.length < count ? html`<p>${label("choices.first", { shown: String(choices.length), count: String(count) })}</p>` : nothing}`;
}

function contested(doc: string, one: Contested): TemplateResult {
  const simple = one.simple && one.options.every(tappable);
  return html`<section class="contested">
    <h2>${placeText(one.label)}</h2>
    <div class="options">${one.options.map((option) => (simple ? tapped(doc, one, option) : written(option)))}</div>
    ${simple ? nothing : html`<p class="hint">${label("choices.inplace")}</p>`}
    <div class="acts">
      ${simple ? nothing : html`<a class="button" href=${link("form", doc, thingOf(one.path))}>${label("choices.open")}</a>`}
      <a class="button" href=${link("history", doc, one.path)}>${label("history.open")}</a>
    </div>
  </section>`;
}

/** One tap takes the value. */
function tapped(doc: string, { path }: Contested, option: Origin): TemplateResult {
  return html`<button type="button" class="pick option" ?disabled=${readOnly.value} @click=${() => void take(doc, path, option.value ?? "")}>${inside(option)}</button>`;
}

function written(option: Origin): TemplateResult {
  return html`<div class="option plain-option">${inside(option)}</div>`;
}

function inside(option: Origin): TemplateResult {
  return html`<span class="pick-name">${valueText(option.says)}</span><span>${byWhom(option)}</span>
    ${option.why ? html`<span class="why">${label("history.why", { why: option.why })}</span>` : nothing}`;
}

/** A value made of parts is settled where it is entered: it has no text of its own. */
function tappable({ value, says }: Origin): boolean {
  return value !== undefined && (value !== "" || !/^[[{]/.test(says));
}

/**
 * The value as it stands in the file, whatever sign the person types with, so
 * it is chosen and not typed.
 */
async function take(doc: string, path: string, value: string): Promise<void> {
  drop(`${doc} ${path}`);
  await enter(doc, { do: "choose", path, value }, { view: "choices" });
}

/** The form in which a field is entered. */
function thingOf(path: string): string {
  return /^\/now\/rigs\/[^/]+\/circuits\/[^/]+/.exec(path)?.[0] ?? /^\/now\/(?:rigs|gauges|pileTypes|piles|criteria)\/[^/]+/.exec(path)?.[0] ?? (path.startsWith("/now/stock") ? "/now/stock" : "/now");
}

/** The core's sentence about open choices, above the readings that wait for them. */
export function choicesBand(doc: string, says: string | undefined): Shown {
  if (!says) return nothing;
  return html`<div class="band choices-band">
    <p>${says}</p>
    <div class="band-acts"><a class="button" href=${link("choices", doc)}>${label("choices.go")}</a></div>
  </div>`;
}

/** The way to the choices in a list of ways. */
export function choicesRow(doc: string, count: number): TemplateResult {
  return html`<a class="row opening" href=${link("choices", doc)}><span class="row-says">${label("choices.row", { count: String(count) })}</span>${chevron()}</a>`;
}

/** Beside a contested field. */
export function contestedLine(doc: string, is: boolean | undefined): Shown {
  if (!is) return nothing;
  return html`<div class="contested-line">
    <p>${label("choices.here")}</p>
    <a class="button" href=${link("choices", doc)}>${label("choices.go")}</a>
  </div>`;
}
