import { html, type TemplateResult } from "lit-html";

/** The mark of a row that opens. */
export function chevron(): TemplateResult {
  return html`<svg class="chevron" width="12" height="20" viewBox="0 0 12 20" aria-hidden="true"><path d="M2 2L10 10L2 18"></path></svg>`;
}
