// Any thing of a job as a form: sections of fields, links to its parts, and
// what can be added.
import { html, nothing, type TemplateResult } from "lit-html";
import { keyed } from "lit-html/directives/keyed.js";
import { groundSketch } from "../chart-ground.ts";
import { readOnly } from "../signals.ts";
import { chevron } from "./chevron.ts";
import { enter, view } from "./data.ts";
import { formField, type Target } from "./fields.ts";
import { frame } from "./frame.ts";
import { ways } from "./groups.ts";
import { label } from "./labels.ts";
import { go } from "./route.ts";
import { thingActs } from "./strike.ts";
import { waiverPart } from "./waiver.ts";
import type { Form, FormSection } from "./views.ts";

export function formScreen(doc: string, path: string): TemplateResult {
  const form = view<Form>(doc, "form", { path });
  const target: Target = { doc, show: { view: "form", path } };
  return frame({
    name: "form",
    ...(form?.ok && form.name ? { over: form.title } : {}),
    title: form?.ok ? form.name || form.title : label("form.title"),
    doc,
    body: form?.ok ? keyed(path, body(target, path, form)) : html`<p class="lead">${form?.says ?? label("core.starting")}</p>`,
  });
}

function body(target: Target, path: string, form: Form): TemplateResult {
  return html`<form class="fields" novalidate @submit=${(event: Event) => event.preventDefault()}>
    ${form.sections.map((section, i) => sectionPart(target, path, section, i))}
    ${form.waiver ? waiverPart(target, form.waiver) : nothing} ${thingActs(target.doc, path, form)}
  </form>`;
}

function sectionPart(target: Target, path: string, section: FormSection, index: number): TemplateResult {
  return html`<section>
    ${section.title ? html`<h2>${section.title}</h2>` : nothing}
    ${groundSketch(section.sketch)} ${section.fields.filter((field) => field !== null).map((field, i) => formField(target, field, `f${index}-${i}`))}
    ${section.links?.length
      ? ways(target.doc, section.links)
      : nothing}
    ${section.adds?.length
      ? html`<div class="acts">
          ${section.adds.map((add) => html`<button type="button" ?disabled=${readOnly.value} @click=${() => void addPart(target, path, add.what, add.path)}>${add.label}</button>`)}
        </div>`
      : nothing}
  </section>`;
}

export { chevron };

/** A part with a page of its own opens; a group of fields appears in place. */
async function addPart(target: Target, here: string, what: string, path: string | undefined): Promise<void> {
  const { answer } = await enter(target.doc, { do: "add", what, path: path ?? here }, target.show, 8);
  const added = answer["added"];
  if (typeof added === "string" && what !== "group" && what !== "piece" && added !== here) go("form", target.doc, added);
}
