// What is the same on every screen: the head with the way back, the bands with
// questions, the status line.
import { signal } from "@preact/signals-core";
import { html, nothing, type TemplateResult } from "lit-html";
import * as host from "../host.ts";
import * as offline from "../offline.ts";
import { aside, core, readOnly, restored, updateOffered, updateTaken } from "../signals.ts";
import { statusOf } from "./status.ts";
import { refusal } from "./data.ts";
import { label } from "./labels.ts";
import { link } from "./route.ts";
import * as route from "./route.ts";
import { notice } from "./notice.ts";
import { current } from "./sizingstate.ts";
import { askedOnTop } from "./turns.ts";

/** The update was put off until the next visit. */
const later = signal(false);
const restoredSeen = signal(false);

type Shown = TemplateResult | typeof nothing;

export interface Screen {
  /** Class of the page. */
  name: string;
  title: string;
  /** Small line above the title, such as the job's name. */
  over?: string;
  body: unknown;
  /** The document the status line is about. */
  doc?: string;
  /** At the end of the head. */
  actions?: unknown;
}

export function frame(screen: Screen): TemplateResult {
  return html`<div class="page ${screen.name}">
    <header class="head">
      <button type="button" class="back" @click=${route.back} aria-label=${label("nav.back")}>${arrow()}</button>
      <div class="head-title">
        ${screen.over ? html`<p class="over">${screen.over}</p>` : nothing}
        <h1 id="title" tabindex="-1">${screen.title}</h1>
      </div>
      ${screen.actions ?? nothing}
    </header>
    ${bands()}
    <main class="main">${screen.body}</main>
    ${statusLine(screen.doc)}
  </div>`;
}

export function arrow(): TemplateResult {
  return html`<svg width="28" height="28" viewBox="0 0 28 28" aria-hidden="true" class="arrow"><path d="M17 5L8 14L17 23"></path></svg>`;
}

export function statusLine(doc: string | undefined): TemplateResult {
  const status = statusOf(doc ?? current.value ?? "");
  return html`<footer class="status ${status.kind}" role="status">${status.text}</footer>`;
}

/** Things said or asked that stand until they are answered. */
export function bands(): Shown {
  const state = core.value;
  const list: TemplateResult[] = [];
  if (state.state === "unavailable") {
    list.push(
      html`<div class="band" role="alert">
        <p>${state.why}</p>
        <div class="band-acts">
          <a class="button" href=${link("jobs")}>${label("nav.jobs")}</a>
          ${state.reason === "no-wasm" ? nothing : html`<button type="button" @click=${() => void host.retryCore()}>${label("core.retry")}</button>`}
        </div>
      </div>`,
    );
  }
  if (readOnly.value) list.push(html`<div class="band"><p>${label("readonly.says")}</p></div>`);
  if (refusal.value !== "") {
    list.push(
      html`<div class="band" role="alert">
        <p>${refusal.value}</p>
        <div class="band-acts"><button type="button" @click=${() => (refusal.value = "")}>${label("band.seen")}</button></div>
      </div>`,
    );
  }
  const question = askedOnTop();
  if (question !== nothing) list.push(question as TemplateResult);
  if (notice.value !== "") {
    list.push(
      html`<div class="band" role="status">
        <p>${notice.value}</p>
        <div class="band-acts"><button type="button" @click=${() => (notice.value = "")}>${label("band.seen")}</button></div>
      </div>`,
    );
  }
  if (restored.value && !restoredSeen.value) {
    list.push(
      html`<div class="band" role="status">
        <p>${label("band.restored")}</p>
        <div class="band-acts"><button type="button" @click=${() => (restoredSeen.value = true)}>${label("band.seen")}</button></div>
      </div>`,
    );
  }
  if (aside.value.length > 0) {
    list.push(
      html`<div class="band">
        <p>${label("aside.band")}</p>
        <div class="band-acts"><a class="button" href=${link("aside")}>${label("aside.look")}</a></div>
      </div>`,
    );
  }
  if (updateTaken.value) {
    list.push(
      html`<div class="band">
        <p>${label("update.taken")}</p>
        <div class="band-acts"><button type="button" @click=${() => location.reload()}>${label("update.reload")}</button></div>
      </div>`,
    );
  } else if (updateOffered.value && !later.value) {
    list.push(
      html`<div class="band">
        <p>${label("update.offered")}</p>
        <div class="band-acts">
          <button type="button" @click=${() => void offline.takeUpdate()}>${label("update.take")}</button>
          <button type="button" @click=${() => (later.value = true)}>${label("update.later")}</button>
        </div>
      </div>`,
    );
  }
  return list.length > 0 ? html`<div class="bands">${list}</div>` : nothing;
}
