// Copying a pile, and striking a thing out: it stays in the file with the
// reason, and can be taken back.
import { html, nothing, type TemplateResult } from "lit-html";
import { readOnly } from "../signals.ts";
import { enter } from "./data.ts";
import { label } from "./labels.ts";
import { back, go } from "./route.ts";
import type { Form } from "./views.ts";

type Shown = TemplateResult | typeof nothing;

export function thingActs(doc: string, path: string, form: Form): Shown {
  if (!form.copy && !form.strike) return nothing;
  const strike = async () => {
    const why = (document.getElementById("strike-why") as HTMLInputElement).value.trim();
    if (why === "") return document.getElementById("strike-why")?.focus();
    const { answer } = await enter(doc, { do: "strike", path, why });
    if (answer.ok) back();
  };
  return html`<section>
    ${form.copy ? html`<div class="acts"><button type="button" ?disabled=${readOnly.value} @click=${() => void copyPile(doc, path)}>${label("thing.copy")}</button></div>` : nothing}
    ${form.strike
      ? html`<details class="strike-out">
          <summary>${label("thing.strike")}</summary>
          <p class="hint">${label("thing.strike.says")}</p>
          <div class="field">
            <label for="strike-why">${label("thing.strike.why")}</label>
            <input class="box" id="strike-why" type="text" autocomplete="off" />
          </div>
          <div class="acts"><button type="button" ?disabled=${readOnly.value} @click=${() => void strike()}>${label("thing.strike.do")}</button></div>
        </details>`
      : nothing}
  </section>`;
}

async function copyPile(doc: string, path: string): Promise<void> {
  const { answer } = await enter(doc, { do: "copy", path }, undefined, 1);
  if (typeof answer["added"] === "string") go("form", doc, answer["added"]);
}
