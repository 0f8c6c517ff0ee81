// What differs between two states of a job: between the beginnings and ends
// of sittings, as the devices' clocks had it.
import { signal } from "@preact/signals-core";
import { html, nothing, type TemplateResult } from "lit-html";
import { live } from "lit-html/directives/live.js";
import { clock } from "./clock.ts";
import { view } from "./data.ts";
import { everything, placeText, valueText } from "./history.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { replace } from "./route.ts";
import type { Compare, Difference, History } from "./views.ts";

/** Entries looked through for sittings at a time. */
const onePage = 100;
/** How many pages of entries have been asked for, by document. */
const pages = signal<{ doc: string; count: number }>({ doc: "", count: 1 });

interface Span {
  who: string;
  first: string;
  last: string;
}

export function compareScreen(doc: string, from: string | undefined, to: string | undefined): TemplateResult {
  const { spans, more, says } = spansOf(doc);
  const since = from ?? (spans[0] ? before(spans[0].first) : undefined);
  const until = to ?? "";
  const found = since === undefined ? undefined : view<Compare>(doc, "compare", { from: since, to: until });
  return frame({
    name: "compare",
    title: label("compare.title"),
    doc,
    body: html`${spans.length > 0 && since !== undefined
        ? html`<div class="two-times">
            ${times("compare-from", label("compare.from"), since, spans.map((span) => ({ value: before(span.first), says: label("compare.before", spoken(span, span.first)) })), (value) => replace("compare", doc, value, ...(until ? [until] : [])))}
            ${times(
              "compare-to",
              label("compare.to"),
              until,
              [{ value: "", says: label("compare.now") }, ...spans.map((span) => ({ value: span.last, says: label("compare.after", spoken(span, span.last)) }))],
              (value) => replace("compare", doc, since, ...(value ? [value] : [])),
            )}
            ${more ? html`<div class="acts"><button type="button" @click=${() => (pages.value = { doc, count: pagesOf(doc) + 1 })}>${label("compare.more")}</button></div>` : nothing}
          </div>`
        : html`<p class="lead">${says}</p>`}
      ${found?.ok
        ? found.count === 0
          ? html`<p class="lead">${label("compare.same")}</p>`
          : differenceList(label("compare.differences"), found.differences, found.count)
        : found?.says
          ? html`<p class="lead">${found.says}</p>`
          : nothing}`,
  });
}

function pagesOf(doc: string): number {
  return pages.value.doc === doc ? pages.value.count : 1;
}

/** The sittings of the job, the latest first. */
function spansOf(doc: string): { spans: Span[]; more: boolean; says: string } {
  const found = new Map<string, Span>();
  let total = 0;
  let seen = 0;
  for (let page = 0; page < pagesOf(doc); page++) {
    const list = view<History>(doc, "history", { path: everything, from: page * onePage, count: onePage });
    if (!list?.ok) return { spans: [...found.values()], more: false, says: list?.says ?? label("core.starting") };
    total = list.count;
    seen += list.rows.length;
    for (const { sitting, who, at } of list.rows) {
      if (at === "") continue;
      const span = found.get(sitting);
      if (!span) found.set(sitting, { who, first: at, last: at });
      else if (at < span.first) span.first = at;
      else if (at > span.last) span.last = at;
    }
  }
  return { spans: [...found.values()].sort((a, b) => (a.first < b.first ? 1 : -1)), more: seen < total, says: label("history.none") };
}

/** The moment before a time: the state without what was entered at it. */
function before(at: string): string {
  const ms = Date.parse(at);
  return Number.isNaN(ms) ? at : new Date(ms - 1).toISOString();
}

function spoken({ who }: Span, at: string): Record<string, string> {
  return { who, at: clock(at) };
}

function times(id: string, name: string, chosen: string, list: { value: string; says: string }[], pick: (value: string) => void): TemplateResult {
  const known = list.some((one) => one.value === chosen);
  return html`<div class="field">
    <label for=${id}>${name}</label>
    <select class="box" id=${id} @change=${(event: Event) => pick((event.target as HTMLSelectElement).value)}>
      ${known ? nothing : html`<option value=${chosen} .selected=${live(true)}>${clock(chosen)}</option>`}
      ${list.map((one) => html`<option value=${one.value} .selected=${live(one.value === chosen)}>${one.says}</option>`)}
    </select>
  </div>`;
}

/** Fields with what stood there before and what stands there after. */
export function differenceList(title: string, list: Difference[], count: number): TemplateResult {
  return html`<section>
    <h2>${title}</h2>
    ${differences(list)}
    ${list.length < count ? html`<p class="hint">${label("choices.first", { shown: String(list.length), count: String(count) })}</p>` : nothing}
  </section>`;
}

export function differences(list: Pick<Difference, "label" | "before" | "after">[]): TemplateResult {
  return html`<ul class="differences">
    ${list.map(
      (one) => html`<li>
        <p class="difference-label">${placeText(one.label)}</p>
        <p class="difference"><span class="was"><span class="said">${label("compare.was")} </span>${valueText(one.before)}</span>${into()}<span class="is"><span class="said">${label("compare.is")} </span>${valueText(one.after)}</span></p>
      </li>`,
    )}
  </ul>`;
}

function into(): TemplateResult {
  return html`<svg class="into" width="28" height="16" viewBox="0 0 28 16" aria-hidden="true"><path d="M1 8H26M19 2L26 8L19 14"></path></svg>`;
}
