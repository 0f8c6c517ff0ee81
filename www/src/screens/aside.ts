// Entries the calculation failed on twice: kept with their text until dropped.
import { html, type TemplateResult } from "lit-html";
import * as host from "../host.ts";
import { aside, docs } from "../signals.ts";
import { clock } from "./clock.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";

export function asideScreen(): TemplateResult {
  return frame({
    name: "aside",
    title: label("aside.title"),
    body: html`<p class="lead">${label(aside.value.length > 0 ? "aside.says" : "aside.none")}</p>
      ${aside.value.map(
        (one) => html`<section>
          <h2>${docs.value.get(one.doc)?.title || label("jobs.untitled")}, ${clock(one.at)}</h2>
          <p>${one.why}</p>
          <pre class="entry-text" tabindex="0">${one.request}</pre>
          <div class="acts"><button type="button" @click=${() => void host.dropAside(one.doc, one.seq)}>${label("aside.drop")}</button></div>
        </section>`,
      )}`,
  });
}
