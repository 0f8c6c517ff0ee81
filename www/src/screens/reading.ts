// The large place: the set reading, or words that say why there is none.
import { html, nothing, type TemplateResult } from "lit-html";
import { ref } from "lit-html/directives/ref.js";
import { gaugeLine, percent } from "../chart-gauge.ts";
import { core } from "../signals.ts";
import { uncertain } from "./data.ts";
import { label } from "./labels.ts";
import { number } from "./number.ts";
import { link } from "./route.ts";
import { minus } from "./symbols.ts";
import type { Readings } from "./views.ts";

type Shown = TemplateResult | typeof nothing;

/** `readings` undefined: nothing answered yet. */
export function reading(doc: string, pile: string | undefined, readings: Readings | undefined, empty = ""): TemplateResult {
  const { words, shown } = stand(readings, empty);
  return html`<section class="reading" aria-label=${label("reading.title")} aria-live="polite">
    ${shown ? figures(doc, pile, shown) : large(words)}
    ${shown || !readings || uncertain() ? nothing : below(doc, pile, readings)}
  </section>`;
}

/** What the large place shows: a reading only in the one state that has one. */
function stand(readings: Readings | undefined, empty: string): { words: string; shown?: Readings } {
  const state = core.value;
  if (state.state === "unavailable") return { words: state.reason === "no-wasm" ? label("core.nowasm") : label("core.unavailable") };
  if (uncertain()) return { words: label(state.state === "replacing" ? "core.replacing" : "core.slow") };
  if (readings === undefined) return { words: empty !== "" && state.state === "ready" ? empty : label("core.starting") };
  if (readings.state === "open" && readings.set !== null) return { words: "", shown: readings };
  return { words: readings.big };
}

function large(words: string): TemplateResult {
  return html`<p class=${words.length > 44 ? "large long" : "large"}>${words}</p>`;
}

function figures(doc: string, pile: string | undefined, r: Readings): TemplateResult {
  return html`<p class="set">${number(doc, pile, r.set)}</p>
    ${r.loadAtSet ? html`<p class="atset">${r.loadSays} ${number(doc, pile, r.loadAtSet)}</p>` : nothing}
    ${efficiency(r)} ${doubt(doc, r)} ${gauge(doc, pile, r)} ${hold(r)} ${lines(others(r), "notes")}`;
}

/** With no set reading the limit already known stays visible, with what opens the window. */
function below(doc: string, pile: string | undefined, r: Readings): TemplateResult {
  return html`${lines(r.reasons.filter((reason) => !r.big.includes(reason)), "reasons")} ${lines(r.ways, "ways", label("reading.ways"))} ${efficiency(r)} ${doubt(doc, r)} ${gauge(doc, pile, r)}
  ${lines(others(r), "notes")}`;
}

function efficiency(r: Readings): Shown {
  return r.efficiency ? html`<p class="efficiency"><strong>${r.efficiency.head}</strong> <span>${r.efficiency.says}</span></p>` : nothing;
}

/** Opens what the doubt is made of, as a number opens its working. */
function doubt(doc: string, r: Readings): Shown {
  return r.doubt ? html`<p class="doubt"><a class="opens" href=${link("sheet", doc, "doubt", "0", r.doubt.pile)}>${minus(r.doubt.says)}</a></p>` : nothing;
}

/** Notes that are not said already. */
function others(r: Readings): string[] {
  return r.notes.filter((note) => note !== r.efficiency?.note);
}

function hold(r: Readings): Shown {
  const said = [r.holdSays, r.guardSays].filter((part) => part).join("; ");
  return said ? html`<p class="hold">${said}</p>` : nothing;
}

function lines(list: string[], kind: string, title = ""): Shown {
  if (list.length === 0) return nothing;
  return html`${title ? html`<p class="lines-title">${title}</p>` : nothing}
    <ul class="lines ${kind}">
      ${list.map((line) => html`<li>${minus(line)}</li>`)}
    </ul>`;
}

function gauge(doc: string, pile: string | undefined, r: Readings): Shown {
  if (!r.never) return nothing;
  const set = r.state === "open" ? r.bar?.set : null;
  const at = r.bar?.never ?? null;
  const title = `${label("reading.stop")} ${r.never.says} ${r.never.unit}`;
  return html`<div class="bar">
    ${r.bar ? gaugeLine({ ...(set == null ? {} : { set }), never: at }, title) : nothing}
    <p class="stop" ${ref((element) => place(element, at))}><span class="stop-word">${label("reading.stop")}</span> ${number(doc, pile, r.never)}</p>
  </div>`;
}

/** Stands the words at the stop edge. */
function place(element: Element | undefined, at: number | null): void {
  if (element instanceof HTMLElement) element.style.setProperty("--at", at === null ? "0%" : percent(at));
}
