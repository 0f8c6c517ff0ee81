// The menu of the first screen.
import { html, nothing, type TemplateResult } from "lit-html";
import { core, readOnly } from "../signals.ts";
import { chevron } from "./form.ts";
import { openExample } from "./example.ts";
import { view } from "./data.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { pickFile } from "./come.ts";
import { everything } from "./history.ts";
import { sendActs } from "./send.ts";
import { go, link } from "./route.ts";
import type { Sizing } from "./views.ts";
import { current, startNew } from "./sizingstate.ts";

export function moreScreen(): TemplateResult {
  const doc = current.value;
  const pile = doc === null ? undefined : view<Sizing>(doc, "sizing")?.pile;
  return frame({
    name: "more",
    title: label("nav.more"),
    ...(doc ? { doc } : {}),
    body: html`
      ${doc
        ? html`<section>
            <h2>${label("more.this")}</h2>
            ${pile ? html`<a class="row opening" href=${link("card", doc, pile)}><span class="row-says">${label("card.title")}</span>${chevron()}</a>` : nothing}
            <a class="row opening" href=${link("convert", doc)}><span class="row-says">${label("convert.title")}</span>${chevron()}</a>
            <a class="row opening" href=${link("keep", doc)}><span class="row-says">${label("more.keep")}</span>${chevron()}</a>
            <a class="row opening" href=${link("compare", doc)}><span class="row-says">${label("compare.title")}</span>${chevron()}</a>
            <a class="row opening" href=${link("history", doc, everything)}><span class="row-says">${label("history.undo.last")}</span>${chevron()}</a>
            ${sendActs(doc)}
            <div class="acts"><button type="button" ?disabled=${readOnly.value} @click=${() => void startNew().then(() => go())}>${label("sizing.startnew")}</button></div>
          </section>`
        : nothing}
      <section>
        <h2>${label("more.jobs")}</h2>
        <a class="row opening" href=${link("jobs")}><span class="row-says">${label("nav.jobs")}</span>${chevron()}</a>
        <a class="row opening" href=${link("paste")}><span class="row-says">${label("more.paste")}</span>${chevron()}</a>
        <div class="acts">
          <button type="button" ?disabled=${core.value.state === "unavailable"} @click=${() => void pickFile()}>${label("more.open")}</button>
          <button type="button" ?disabled=${core.value.state === "unavailable"} @click=${() => void openExample()}>${label("nav.example")}</button>
        </div>
      </section>
      <section>
        <h2>${label("more.page")}</h2>
        <a class="row opening" href=${link("settings")}><span class="row-says">${label("nav.settings")}</span>${chevron()}</a>
        <a class="row opening" href=${link("about")}><span class="row-says">${label("nav.about")}</span>${chevron()}</a>
      </section>
    `,
  });
}
