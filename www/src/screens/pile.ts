// One pile: its readings, limits, segments and head.
import { html, nothing, type TemplateResult } from "lit-html";
import { pileDrawing } from "../chart-pile.ts";
import { choicesBand } from "./choices.ts";
import { readOnly } from "../signals.ts";
import { enter, view } from "./data.ts";
import { frame } from "./frame.ts";
import { groupPart } from "./groups.ts";
import { label } from "./labels.ts";
import { limitList } from "./limits.ts";
import { reading } from "./reading.ts";
import { link } from "./route.ts";
import type { Pile } from "./views.ts";

export function pileScreen(doc: string, id: string): TemplateResult {
  const pile = view<Pile>(doc, "pile", { pile: id });
  const shown = pile?.ok ? pile : undefined;
  return frame({
    name: "pile",
    over: label("pile.title"),
    title: shown?.mark || label("thing.unnamed"),
    doc,
    actions: html`<a class="button" href=${link("size", doc, id)}>${label("pile.size")}</a>`,
    body: shown ? body(doc, id, shown) : html`<p class="lead">${pile?.says ?? label("core.starting")}</p>`,
  });
}

function body(doc: string, id: string, pile: Pile): TemplateResult {
  return html`${choicesBand(doc, pile.choicesSay)}
    <p class="over">${label("reading.set")}</p>
    ${reading(doc, id, pile)}
    ${pile.groups.map((group) => groupPart(doc, id, group))} ${surveyed(doc, id, pile.survey)}
    ${pile.drawing ? html`<section class="group"><h2>${label("pile.drawing")}</h2>${pileDrawing(pile.drawing, label("pile.drawing"))}</section>` : nothing}
    <section class="group">
      <h2>${label("row.limits")}</h2>
      ${limitList(doc, id, pile.limits)}
    </section>
    <div class="acts">
      <a class="button" href=${link("card", doc, id)}>${label("card.title")}</a>
      <a class="button" href=${link("convert", doc, id)}>${label("convert.title")}</a>
      <a class="button" href=${link("form", doc, pile.fieldsPath)}>${label("pile.edit")}</a>
      <button type="button" @click=${() => print()}>${label("print")}</button>
    </div>
    ${pile.cautions.length
      ? html`<ul class="cautions">
          ${pile.cautions.map((line) => html`<li>${line}</li>`)}
        </ul>`
      : nothing}`;
}

/** The level of the head as measured. What cannot be read stays in the box, with the core's sentence on top. */
function surveyed(doc: string, pile: string, survey: Pile["survey"]): TemplateResult {
  const record = async (event: Event) => {
    event.preventDefault();
    const box = document.getElementById("survey") as HTMLInputElement;
    const { answer } = await enter(doc, { do: "survey", pile, typed: box.value }, undefined, 1);
    if (answer.ok) box.value = "";
  };
  return html`<form class="fields screen-only" novalidate @submit=${(event: Event) => void record(event)}>
    <div class="field">
      <label for="survey">${survey.label}</label>
      <div class="entry"><input class="box" id="survey" type="text" autocomplete="off" /><span class="unit">${survey.unit}</span></div>
    </div>
    <div class="acts"><button ?disabled=${readOnly.value}>${survey.act}</button></div>
  </form>`;
}
