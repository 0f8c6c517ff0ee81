// A list of the whole job, or about one thing of it, as the core writes it, to
// read and to print: what to order, what to cut, a certificate. A person may sign
// it, or record something on it.
import { html, nothing, type TemplateResult } from "lit-html";
import { view } from "./data.ts";
import { formField } from "./fields.ts";
import { frame } from "./frame.ts";
import { groupPart } from "./groups.ts";
import { label } from "./labels.ts";
import { pager, rowsAPage } from "./pager.ts";
import { recordBox } from "./recordbox.ts";
import { minus } from "./symbols.ts";
import type { Sheet } from "./views.ts";

/** `of`: the id of the thing that the sheet is about. */
export function sheetScreen(doc: string, name: string, page: number, of?: string): TemplateResult {
  const about = of === undefined ? {} : { of };
  const show = { view: name, from: page * rowsAPage, count: rowsAPage, ...about };
  const sheet = view<Sheet>(doc, name, { from: show.from, count: show.count, ...about });
  return frame({
    name: "sheet",
    over: sheet?.ok ? sheet.over : "",
    title: sheet?.ok ? sheet.title : label("sheet.title"),
    doc,
    body: sheet?.ok
      ? html`${sheet.lead.map((line) => html`<p class="lead">${minus(line)}</p>`)} ${sheet.groups.map((group) => groupPart(doc, undefined, group))}
          ${sheet.count === undefined ? nothing : pager(["sheet", doc, name], page, sheet.from ?? 0, Math.min(rowsAPage, sheet.count - (sheet.from ?? 0)), sheet.count)}
          ${sheet.fields?.length ? html`<section class="fields screen-only"><h2>${label("sheet.terms")}</h2>${sheet.fields.map((field, i) => formField({ doc, show }, field, `s${i}`))}</section>` : nothing}
          ${sheet.boxes?.map((box, i) => recordBox(doc, box, i > 0 ? String(i) : ""))}
          <div class="acts"><button type="button" @click=${() => print()}>${label("print")}</button></div>`
      : html`<p class="lead">${sheet?.says ?? label("core.starting")}</p>`,
  });
}
