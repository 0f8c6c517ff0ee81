// The gauge read both ways: what a reading means, and what a load needs.
// Nothing is entered; what is typed lives on the screen only.
import { signal } from "@preact/signals-core";
import { html, nothing, type TemplateResult } from "lit-html";
import { live } from "lit-html/directives/live.js";
import { ask, view } from "./data.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { number } from "./number.ts";
import { minus, unitText } from "./symbols.ts";
import type { Conversion, Convert } from "./views.ts";

type Side = "reading" | "load";

const sides: readonly Side[] = ["reading", "load"];
const typed = signal<Record<Side, string>>({ reading: "", load: "" });
const units = signal<Partial<Record<Side, string>>>({});
const answer = signal<{ of: string; convert: Convert } | null>(null);
let asked = 0;

export function convertScreen(doc: string, pile: string | undefined): TemplateResult {
  const of = `${doc} ${pile ?? ""}`;
  const plain = view<Convert>(doc, "convert", pile ? { pile } : {});
  const convert = answer.value?.of === of ? answer.value.convert : plain;
  return frame({
    name: "convert",
    ...(convert?.ok && convert.rig ? { over: convert.rig } : {}),
    title: label("convert.title"),
    doc,
    body: convert?.ok ? sides.map((side) => part(doc, pile, of, side, convert[side])) : html`<p class="lead">${convert?.says ?? label("core.starting")}</p>`,
  });
}

function part(doc: string, pile: string | undefined, of: string, side: Side, c: Conversion): TemplateResult {
  const id = `convert-${side}`;
  const again = (change: () => void) => {
    change();
    void convertAgain(doc, pile, of);
  };
  return html`<section class="conversion">
    <label for=${id}><h2>${label(`convert.${side}`)}</h2></label>
    <div class="entry">
      <input class="box" id=${id} type="text" inputmode="decimal" autocomplete="off" spellcheck="false" enterkeyhint="done"
        aria-describedby=${`${id}-says`} aria-invalid=${c.problem ? "true" : "false"} .value=${live(typed.value[side])}
        @input=${(event: Event) => again(() => (typed.value = { ...typed.value, [side]: (event.target as HTMLInputElement).value }))} />
      <select class="unit" aria-label=${label("field.unit", { name: label(`convert.${side}`) })}
        @change=${(event: Event) => again(() => (units.value = { ...units.value, [side]: (event.target as HTMLSelectElement).value }))}>
        ${c.units.map((unit) => html`<option value=${unit} .selected=${live(unit === (units.value[side] ?? c.unit))}>${unitText(unit)}</option>`)}
      </select>
      <span class="echo" id=${`${id}-says`}>${c.echo ? `= ${unitText(c.echo)}` : ""}</span>
    </div>
    <div class="problem" aria-live="polite">${c.problem ? html`<p>${c.problem.says}</p>` : c.says ? html`<p>${c.says}</p>` : nothing}</div>
    ${c.lines?.map((line) => html`<div class="line"><span class="line-label">${line.label}</span><span class="line-value">${number(doc, pile, line.value)}</span></div>`)}
    ${c.notes?.length ? html`<ul class="lines">${c.notes.map((note) => html`<li>${minus(note)}</li>`)}</ul>` : nothing}
  </section>`;
}

async function convertAgain(doc: string, pile: string | undefined, of: string): Promise<void> {
  const turn = ++asked;
  const text = (side: Side) => {
    const plain = typed.value[side].trim();
    const unit = units.value[side];
    return plain === "" || unit === undefined || /[a-z]/i.test(plain) ? plain : `${plain} ${unit}`;
  };
  const convert = await ask<Convert>(doc, "convert", { ...(pile ? { pile } : {}), reading: text("reading"), load: text("load") });
  if (turn === asked) answer.value = { of, convert };
}
