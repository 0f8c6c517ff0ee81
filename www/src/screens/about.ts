// What the page is for, and the cautions that belong to every reading.
import { html, type TemplateResult } from "lit-html";
import { frame } from "./frame.ts";
import { label, labelList } from "./labels.ts";

export function aboutScreen(): TemplateResult {
  return frame({
    name: "about",
    title: label("nav.about"),
    body: html`<p class="lead">${label("app.name")}. ${label("app.purpose")}.</p>
      <section>
        <h2>${label("about.cautions")}</h2>
        <ul class="plain">
          ${labelList("caution").map((line) => html`<li>${line}</li>`)}
        </ul>
      </section>
      <section>
        <h2>${label("about.how")}</h2>
        ${labelList("about").map((line) => html`<p>${line}</p>`)}
      </section>`,
  });
}
