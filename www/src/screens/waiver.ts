// A limit waived by a named person: who, in what role, on what day, why.
import { html, nothing, type TemplateResult } from "lit-html";
import { readOnly } from "../signals.ts";
import { enter } from "./data.ts";
import { formField, type Target } from "./fields.ts";
import { label } from "./labels.ts";
import type { Form } from "./views.ts";

export function waiverPart(target: Target, waiver: NonNullable<Form["waiver"]>): TemplateResult {
  return html`<details class="waiver" ?open=${waiver.active}>
    <summary>${label(waiver.active ? "waiver.title" : "waiver.ask", { limit: waiver.label })}</summary>
    ${waiver.says ? html`<p>${waiver.says}</p>` : nothing} ${waiver.fields.map((field, i) => formField(target, field, `w-${i}`))}
    ${waiver.active
      ? html`<div class="acts">
          <button type="button" ?disabled=${readOnly.value} @click=${() => void enter(target.doc, { do: "unwaive", path: waiver.path }, target.show)}>${label("waiver.drop")}</button>
        </div>`
      : nothing}
  </details>`;
}
