// Numbers as the core says them. Every one opens its working.
import { html, nothing, type TemplateResult } from "lit-html";
import { link } from "./route.ts";
import { minus, unitText } from "./symbols.ts";
import type { Says } from "./views.ts";

type Shown = TemplateResult | typeof nothing;

/** A number with its unit; a link to its working where there is one. */
export function number(doc: string, pile: string | undefined, says: Says | null | undefined, kind = ""): Shown {
  if (!says) return nothing;
  const inner = html`<span class="v">${minus(says.says)}</span>${says.unit ? html`\u202f<span class="u">${unitText(says.unit)}</span>` : nothing}`;
  if (!says.open) return html`<span class="num ${kind}">${inner}</span>`;
  return html`<a class="num opens ${kind}" href=${workingLink(doc, pile, says.open)}>${inner}</a>`;
}

export function workingLink(doc: string, pile: string | undefined, step: string): string {
  return pile ? link("working", doc, step, pile) : link("working", doc, step);
}
