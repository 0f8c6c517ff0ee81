// The way through a list that comes a page at a time.
import { html, nothing, type TemplateResult } from "lit-html";
import { label } from "./labels.ts";
import { replace } from "./route.ts";

export const rowsAPage = 50;

/** `to` is the address without the page; `shown` rows stand on this page from `from` on, of `count`. */
export function pager(to: string[], page: number, from: number, shown: number, count: number, most = rowsAPage): TemplateResult {
  const last = from + shown;
  return html`<div class="pages">
    ${page > 0 ? html`<button type="button" @click=${() => replace(...to, `${page - 1}`)}>${label("piles.before")}</button>` : nothing}
    ${count > most ? html`<p>${label("piles.range", { from: `${from + 1}`, to: `${last}`, count: `${count}` })}</p>` : nothing}
    ${last < count ? html`<button type="button" @click=${() => replace(...to, `${page + 1}`)}>${label("piles.after")}</button>` : nothing}
  </div>`;
}
