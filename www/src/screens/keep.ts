// A sizing or job gets its title, and the person a name.
import { signal } from "@preact/signals-core";
import { html, type TemplateResult } from "lit-html";
import { live } from "lit-html/directives/live.js";
import * as host from "../host.ts";
import { meta, readOnly } from "../signals.ts";
import { enter, view } from "./data.ts";
import { blurOnEnter } from "./fields.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { back } from "./route.ts";
import type { Info } from "./views.ts";

/** The title while it is typed; null: as stored. */
const title = signal<string | null>(null);

export function keepScreen(doc: string): TemplateResult {
  const info = view<Info>(doc, "info");
  const stored = info?.ok ? info.title : "";
  return frame({
    name: "keep",
    title: label("keep.title"),
    doc,
    body: html`<p class="lead">${label("keep.says")}</p>
      <div class="field">
        <label for="job-title">${label("keep.job")}</label>
        <input id="job-title" class="box" type="text" autocomplete="off" ?readonly=${readOnly.value} .value=${live(title.value ?? stored)}
          @input=${(event: Event) => (title.value = (event.target as HTMLInputElement).value)} @keydown=${blurOnEnter} />
      </div>
      ${whoField()}
      <div class="acts"><button type="button" class="main-act" ?disabled=${readOnly.value} @click=${() => void keep(doc)}>${label("keep.do")}</button></div>`,
  });
}

/** The name that stands beside what is entered. */
export function whoField(): TemplateResult {
  return html`<div class="field">
    <label for="who">${label("keep.who")}</label>
    <input id="who" class="box" type="text" autocomplete="name" .value=${live(meta.value?.who ?? "")}
      @change=${(event: Event) => void host.setWho((event.target as HTMLInputElement).value)} @keydown=${blurOnEnter} />
    <p class="hint">${label("keep.who.says")}</p>
  </div>`;
}

async function keep(doc: string): Promise<void> {
  const typed = title.peek();
  if (typed !== null) await enter(doc, { do: "title", title: typed }, { view: "info" });
  title.value = null;
  back();
}
