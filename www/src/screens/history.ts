// Who stated what, the latest first, and the way to take an entry back.
import { html, nothing, type TemplateResult } from "lit-html";
import { meta, readOnly } from "../signals.ts";
import { clock } from "./clock.ts";
import { ask, enter, refusal, view } from "./data.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { link } from "./route.ts";
import { minus, unitText } from "./symbols.ts";
import type { History, HistoryRow, Origin } from "./views.ts";

const onePage = 50;
/** The whole job. */
export const everything = "/now";

export function historyScreen(doc: string, path: string, page: number): TemplateResult {
  const list = view<History>(doc, "history", { path, from: page * onePage, count: onePage });
  const shown = list?.ok ? list : undefined;
  return frame({
    name: "history",
    over: label("history.title"),
    title: path === everything ? label("history.all") : placeText(shown?.label ?? "") || label("history.title"),
    doc,
    body: shown ? body(doc, path, page, shown) : html`<p class="lead">${list?.says ?? label("core.starting")}</p>`,
  });
}

function body(doc: string, path: string, page: number, list: History): TemplateResult {
  const more = (page + 1) * onePage < list.count;
  // Of one value only the latest entry stands; of a thing any may.
  const single = list.rows.every((row) => row.fields.length === 1 && row.fields[0]?.label === list.label);
  return html`${list.count === 0 ? html`<p class="lead">${label("history.none")}</p>` : nothing}
    <ol class="trace">
      ${list.rows.map((row, i) => entry(doc, row, single, !single || (page === 0 && i === 0)))}
    </ol>
    ${page > 0 || more
      ? html`<nav class="pages">
          ${page > 0 ? html`<a class="button" href=${link("history", doc, path, String(page - 1))}>${label("history.later")}</a>` : nothing}
          ${more ? html`<a class="button" href=${link("history", doc, path, String(page + 1))}>${label("history.earlier")}</a>` : nothing}
        </nav>`
      : nothing}`;
}

function entry(doc: string, row: HistoryRow, single: boolean, stands: boolean): TemplateResult {
  return html`<li class="entry-of">
    ${single
      ? html`<p class="entry-says">${valueText(row.says)}</p>`
      : html`<dl class="facts">${row.fields.map((one) => html`<div><dt>${placeText(one.label)}</dt><dd>${valueText(one.says)}</dd></div>`)}</dl>`}
    ${row.why ? html`<p class="why">${label("history.why", { why: row.why })}</p>` : nothing}
    <div class="entry-foot">
      <p class="entry-by">${byWhom(row)}</p>
      ${stands && row.at !== "" ? html`<button type="button" class="undo" ?disabled=${readOnly.value} @click=${() => void undo(doc, row)}>${label("history.undo")}</button>` : nothing}
    </div>
  </li>`;
}

/** A value for people; what is made of parts without its punctuation. */
export function valueText(says: string): string {
  if (!/^[[{]/.test(says)) return minus(unitText(says));
  const parts = says.replace(/[[\]{}"]/g, "").replace(/:/g, ": ").replace(/,/g, ", ");
  return parts.trim() === "" ? label("history.none") : minus(parts);
}

/** A field's label; of a field without words of its own only the last part of its path. */
export function placeText(text: string): string {
  return text.replace(/\/now\/\S*\/([^/\s]+)/, "$1");
}

/** "Ada, this device, 10:42". */
export function byWhom({ who, device, at }: Origin): string {
  const where = device === "" ? "" : device === meta.value?.device ? label("history.device.this") : label("history.device.other", { id: device.slice(-4) });
  return [who, where, at ? clock(at) : ""].filter((part) => part !== "").join(", ");
}

export async function undo(doc: string, { sitting, s }: { sitting: string; s: number }): Promise<void> {
  await enter(doc, { do: "undo", of: { sitting, s } });
}

/** Beside a stated value: where its history is, and the way back by one entry. */
export function statedActs(doc: string, path: string): TemplateResult {
  return html`<div class="acts">
    <a class="button" href=${link("history", doc, path)}>${label("history.open")}</a>
    <button type="button" class="undo" ?disabled=${readOnly.value} @click=${() => void undoLatest(doc, path)}>${label("history.undo.latest")}</button>
  </div>`;
}

async function undoLatest(doc: string, path: string): Promise<void> {
  const list = await ask<History>(doc, "history", { path, from: 0, count: 1 });
  const latest = list.ok ? list.rows[0] : undefined;
  if (latest) await undo(doc, latest);
  else refusal.value = list.ok ? label("history.none") : (list.says ?? "");
}

/** A clock beside a field that has something stated. */
export function historyLink(doc: string, path: string, name: string): TemplateResult {
  return html`<a class="to-history" href=${link("history", doc, path)} aria-label=${label("history.of", { name })}>
    <svg width="24" height="24" viewBox="0 0 24 24" aria-hidden="true"><circle cx="12" cy="12" r="9"></circle><path d="M12 6.5V12L15.5 15"></path></svg>
  </a>`;
}
