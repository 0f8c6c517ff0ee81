// How a table is read: where its headers stand, how it is parted, what each
// column holds, and what holds for all of its rows.
import { signal } from "@preact/signals-core";
import { html, nothing, type TemplateResult } from "lit-html";
import { live } from "lit-html/directives/live.js";
import { none } from "./bringrows.ts";
import { preview, say, sayOf, signSaid } from "./bringstate.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { link } from "./route.ts";
import type { Choice, Import, ImportColumn } from "./views.ts";

/** Columns shown at first, and more with every tap. */
const some = 24;
const shown = signal({ doc: "", count: some });
/** Lines from the top in which headers are looked for. */
const lines = 20;
/** A unit that was not chosen; "" is the unit of plain numbers. */
const unknown = "?";

export function bringColumnsScreen(doc: string): TemplateResult {
  const now = preview(doc, 0);
  return frame({
    name: "bring-columns",
    over: label("bring.title"),
    title: label("bring.columns"),
    doc,
    body: now === null ? none(doc) : now === undefined ? html`<p class="lead" role="status">${label("bring.reading")}</p>` : now.ok ? body(doc, now) : html`<p class="lead">${now.says ?? ""}</p>`,
  });
}

function body(doc: string, now: Import): TemplateResult {
  const count = shown.value.doc === doc ? shown.value.count : some;
  return html`${now.problems.length > 0 ? html`<div class="band" role="alert">${now.problems.map((says) => html`<p>${says}</p>`)}</div>` : nothing}
    <section>
      ${now.columns.slice(0, count).map((column) => oneColumn(now, column))}
      ${count < now.columns.length
        ? html`<div class="acts"><button type="button" @click=${() => (shown.value = { doc, count: count + some })}>${label("bring.columns.more", { count: `${now.columns.length - count}` })}</button></div>`
        : nothing}
    </section>
    <div class="acts"><a class="button main-link" href=${link("bring-rows", doc)}>${label("bring.back")}</a></div>
    ${now.choices.some(({ choices }) => choices.length > 0)
      ? html`<section>
          <h2>${label("bring.defaults")}</h2>
          <p class="hint">${label("bring.defaults.hint")}</p>
          ${now.choices
            .filter(({ choices }) => choices.length > 0)
            .map((one) => choose(`default-${one.field}`, one.label, one.chosen, [{ value: "", label: label("bring.defaults.none") }, ...one.choices], (value) => sayOf("defaults", one.field, value)))}
        </section>`
      : nothing}
    <section>
      <h2>${label("bring.parts")}</h2>
      ${choose("header", label("bring.header"), `${now.header}`, headers(), (value) => say({ header: parseInt(value, 10) }))}
      ${choose(
        "separator",
        label("bring.separator"),
        now.separator,
        [...(now.separator === "" ? [{ value: "", label: label("bring.separator.none") }] : []), ...now.separators.map((one) => ({ value: one.separator, label: one.label }))],
        (value) => say({ separator: value }),
      )}
      ${choose(
        "decimal-sign",
        label("handout.sign"),
        signSaid(),
        [
          { value: "", label: label("bring.sign.asked") },
          { value: ".", label: label("handout.point") },
          { value: ",", label: label("handout.comma") },
        ],
        (value) => say({ sign: value }),
      )}
    </section>`;
}

function headers(): Choice[] {
  const list = Array.from({ length: lines }, (_, i) => ({ value: `${i + 1}`, label: label("bring.at", { line: `${i + 1}` }) }));
  return [{ value: "0", label: label("bring.header.none") }, ...list];
}

function oneColumn(now: Import, column: ImportColumn): TemplateResult {
  const id = `column-${column.column}`;
  return html`<div class="table-column">
    <label for=${id}>${column.header || label("bring.column", { number: `${column.column + 1}` })}</label>
    <p class="table-sample">${column.sample.length > 0 ? column.sample.join("; ") : label("bring.blank")}</p>
    <div class="table-is">
      ${box(id, column.field, [{ value: "", label: label("bring.notread") }, ...now.fields.map(({ field, label }) => ({ value: field, label }))], (value) => sayOf("columns", `${column.column}`, value))}
      ${column.units.length > 0 ? unitBox(column) : nothing}
    </div>
  </div>`;
}

function unitBox(column: ImportColumn): TemplateResult {
  const plain = column.units.includes("");
  const known = column.unit !== "" || (plain && !column.needsUnit);
  const list = column.units.map((unit) => ({ value: unit, label: unit || label("bring.unit.plain") }));
  const name = label("bring.unit", { column: column.header || label("bring.column", { number: `${column.column + 1}` }) });
  return box(`unit-${column.column}`, known ? column.unit : unknown, [...(known ? [] : [{ value: unknown, label: label("bring.unit.none") }]), ...list], (value) => value !== unknown && sayOf("units", `${column.column}`, value), name);
}

function choose(id: string, name: string, chosen: string, list: Choice[], pick: (value: string) => void): TemplateResult {
  return html`<div class="field">
    <label for=${id}>${name}</label>
    ${box(id, chosen, list, pick)}
  </div>`;
}

function box(id: string, chosen: string, list: Choice[], pick: (value: string) => void, name?: string): TemplateResult {
  return html`<select class="box" id=${id} aria-label=${name ?? nothing} @change=${(event: Event) => pick((event.target as HTMLSelectElement).value)}>
    ${list.map((one) => html`<option value=${one.value} .selected=${live(one.value === chosen)}>${one.label}</option>`)}
  </select>`;
}
