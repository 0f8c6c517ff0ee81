// One pile: its readings, limits, segments and head.
import { html, nothing, type TemplateResult } from "lit-html";
import { pileDrawing } from "../chart-pile.ts";
import { choicesBand } from "./choices.ts";
import { view } from "./data.ts";
import { frame } from "./frame.ts";
import { groupPart } from "./groups.ts";
import { label } from "./labels.ts";
import { limitList } from "./limits.ts";
import { reading } from "./reading.ts";
import { recordBox } from "./recordbox.ts";
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
    ${pile.groups.map((group) => groupPart(doc, id, group))} ${recordBox(doc, pile.survey)}
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
