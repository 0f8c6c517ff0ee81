// A small form whose text goes into a record, or signs something, at once. What
// cannot be read stays in its box, with the core's sentence on top.
import { html, nothing, type TemplateResult } from "lit-html";
import { readOnly } from "../signals.ts";
import { enter } from "./data.ts";
import { unitText } from "./symbols.ts";
import type { RecordBox } from "./views.ts";

/** `at` tells boxes of one kind on one screen apart. */
export function recordBox(doc: string, of: RecordBox, at = ""): TemplateResult {
  const id = (name: string) => `${of.do}${at}-${name}`;
  const box = (name: string) => document.getElementById(id(name)) as HTMLInputElement;
  const record = async (event: Event) => {
    event.preventDefault();
    const typed = Object.fromEntries(of.inputs.map((input) => [input.name, box(input.name).value.trim()]));
    const { answer } = await enter(doc, { do: of.do, ...of.args, ...typed }, undefined, 1);
    if (answer.ok) for (const input of of.inputs) if (input.unit) box(input.name).value = "";
  };
  return html`<form class="fields screen-only" novalidate @submit=${(event: Event) => void record(event)}>
    ${of.title ? html`<h2>${of.title}</h2>` : nothing} ${of.says ? html`<p class="hint">${of.says}</p>` : nothing}
    ${of.inputs.map(
      (input) => html`<div class="field">
        <label for=${id(input.name)}>${input.label}</label>
        <div class="entry">${input.choices
            ? html`<select class="box" id=${id(input.name)}>${input.choices.map((one) => html`<option value=${one.value}>${one.label}</option>`)}</select>`
            : html`<input class="box" id=${id(input.name)} type="text" autocomplete="off" />`}${input.unit ? html`<span class="unit">${unitText(input.unit)}</span>` : nothing}</div>
      </div>`,
    )}
    <div class="acts"><button class="main-act" ?disabled=${readOnly.value}>${of.act}</button></div>
  </form>`;
}
