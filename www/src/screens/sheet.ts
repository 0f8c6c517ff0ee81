// A list of the whole job as the core writes it, to read and to print: what to
// order, what to cut, what is paid by length. A person may sign it.
import { html, nothing, type TemplateResult } from "lit-html";
import { readOnly } from "../signals.ts";
import { enter, view } from "./data.ts";
import { formField } from "./fields.ts";
import { frame } from "./frame.ts";
import { groupPart } from "./groups.ts";
import { label } from "./labels.ts";
import { pager, rowsAPage } from "./pager.ts";
import { minus } from "./symbols.ts";
import type { Sheet } from "./views.ts";

export function sheetScreen(doc: string, name: string, page: number): TemplateResult {
  const show = { view: name, from: page * rowsAPage, count: rowsAPage };
  const sheet = view<Sheet>(doc, name, { from: show.from, count: show.count });
  return frame({
    name: "sheet",
    over: sheet?.ok ? sheet.over : "",
    title: sheet?.ok ? sheet.title : label("sheet.title"),
    doc,
    body: sheet?.ok
      ? html`${sheet.lead.map((line) => html`<p class="lead">${minus(line)}</p>`)} ${sheet.groups.map((group) => groupPart(doc, undefined, group))}
          ${sheet.count === undefined ? nothing : pager(["sheet", doc, name], page, sheet.from ?? 0, Math.min(rowsAPage, sheet.count - (sheet.from ?? 0)), sheet.count)}
          ${sheet.fields?.length ? html`<section class="fields screen-only"><h2>${label("sheet.terms")}</h2>${sheet.fields.map((field, i) => formField({ doc, show }, field, `s${i}`))}</section>` : nothing}
          ${sheet.sign ? sign(doc, sheet.sign) : nothing}
          <div class="acts"><button type="button" @click=${() => print()}>${label("print")}</button></div>`
      : html`<p class="lead">${sheet?.says ?? label("core.starting")}</p>`,
  });
}

function sign(doc: string, what: NonNullable<Sheet["sign"]>): TemplateResult {
  const value = (id: string) => (document.getElementById(id) as HTMLInputElement).value.trim();
  const done = async (event: Event) => {
    event.preventDefault();
    await enter(doc, { do: what.do, name: value("sign-name"), role: value("sign-role") }, undefined, 1);
  };
  const box = (id: string, name: string) => html`<div class="field"><label for=${id}>${name}</label><input class="box" id=${id} type="text" autocomplete="off" /></div>`;
  return html`<form class="fields screen-only" novalidate @submit=${(event: Event) => void done(event)}>
    <h2>${what.label}</h2>
    <p class="hint">${what.says}</p>
    ${box("sign-name", label("sign.name"))} ${box("sign-role", label("sign.role"))}
    <div class="acts"><button class="main-act" ?disabled=${readOnly.value}>${what.label}</button></div>
  </form>`;
}
