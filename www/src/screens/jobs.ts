// The jobs on this device, newest first, and one of them.
import { signal } from "@preact/signals-core";
import { html, nothing, type TemplateResult } from "lit-html";
import * as host from "../host.ts";
import type { DocInfo, Json } from "../protocol.ts";
import { core, docs, persisted, readOnly } from "../signals.ts";
import { clock } from "./clock.ts";
import { choicesRow } from "./choices.ts";
import { ask, enter, view } from "./data.ts";
import { chevron } from "./form.ts";
import { frame } from "./frame.ts";
import { everything } from "./history.ts";
import { label } from "./labels.ts";
import { notice } from "./notice.ts";
import { link, replace } from "./route.ts";
import { lookAt } from "./opened.ts";
import { sendActs } from "./send.ts";
import { minus } from "./symbols.ts";
import { current, kept, shelf } from "./sizingstate.ts";
import { isSizing, type Answered, type Info, type Kept, type Sizing } from "./views.ts";

/** Jobs listed at once; the oldest beyond are reached by removing others. */
const most = 40;

export function jobsScreen(): TemplateResult {
  const list = kept.value.slice(0, most);
  const works = core.value.state !== "unavailable";
  return frame({
    name: "jobs",
    title: label("nav.jobs"),
    body: html`${list.length === 0 ? html`<p class="lead">${label("jobs.none")}</p>` : nothing}
      ${list.map(
        (info) => html`<div class="job">
          ${works
            ? html`<a class="row opening" href=${link("job", info.doc)}><span class="row-says">${titleOf(info)}</span><span class="job-when">${whenOf(info)}</span>${chevron()}</a>`
            : html`<div class="row"><span class="row-says">${titleOf(info)}</span><span class="job-when">${whenOf(info)}</span></div>
                ${sendActs(info.doc)}`}
        </div>`,
      )}
      ${!works && docs.value.has(shelf) ? html`<div class="job"><div class="row"><span class="row-says">${label("pick.shelf")}</span></div>${sendActs(shelf)}</div>` : nothing}
      <p class="hint evict">${label(persisted.value === true ? "jobs.evict.promised" : "jobs.evict.may")}</p>`,
  });
}

/** An untitled sizing goes by its one line. */
function titleOf(info: DocInfo): string {
  if (info.title || core.value.state === "unavailable") return info.title || label("jobs.untitled");
  const sizing = view<Sizing>(info.doc, "sizing");
  return (sizing?.ok && minus(sizing.last)) || label("jobs.untitled");
}

function whenOf(info: DocInfo): string {
  if (info.broken) return info.broken;
  const saved = info.changedAt ? label("jobs.changed", { at: clock(info.changedAt) }) : "";
  return info.unfiledSince ? `${saved}; ${label("jobs.unfiled", { at: clock(info.unfiledSince) })}` : saved;
}

/** The document whose forgetting is being asked about. */
const asking = signal("");

export function jobScreen(doc: string): TemplateResult {
  const info = view<Info>(doc, "info");
  const kind = !info?.ok ? undefined : isSizing(info) ? "sizing" : "job";
  const stored = docs.value.get(doc);
  return frame({
    name: "job",
    over: kind === "sizing" ? label("job.sizing") : label("job.job"),
    title: (info?.ok ? info.title : stored?.title) || label("jobs.untitled"),
    doc,
    body: html`
      ${info && !info.ok ? html`<p class="lead">${info.says ?? ""}</p>` : nothing}
      <section>
        ${kind === "sizing" ? html`<div class="acts"><button type="button" class="main-act" @click=${() => void lookAt(doc)}>${label("job.takeup")}</button></div>` : nothing}
        ${kind !== undefined ? html`<a class="row opening" href=${link("piles", doc)}><span class="row-says">${label("piles.title")}</span>${chevron()}</a>` : nothing}
        <a class="row opening" href=${link("keep", doc)}><span class="row-says">${label("job.name")}</span>${chevron()}</a>
        ${info?.ok ? html`<a class="row opening" href=${link("form", doc, "/now")}><span class="row-says">${label("job.settings")}</span>${chevron()}</a>` : nothing}
        ${info?.ok && info.choices ? choicesRow(doc, info.choices) : nothing}
      </section>
      ${info?.ok ? before(doc) : nothing}
      <section>
        <h2>${label("job.out")}</h2>
        ${sendActs(doc)}
      </section>
      ${info?.ok ? things(doc) : nothing}
      <section>
        <h2>${label("job.forget.title")}</h2>
        ${asking.value === doc
          ? html`<div class="band">
              <p>${stored?.unfiledSince ? label("job.forget.unfiled") : label("job.forget.ask")}</p>
              <div class="band-acts">
                <button type="button" @click=${() => void forget(doc)}>${label("job.forget.yes")}</button>
                <button type="button" @click=${() => (asking.value = "")}>${label("job.forget.no")}</button>
              </div>
            </div>`
          : html`<div class="acts"><button type="button" ?disabled=${readOnly.value} @click=${() => (asking.value = doc)}>${label("job.forget")}</button></div>`}
      </section>
    `,
  });
}

/** What was entered, and the way back. */
function before(doc: string): TemplateResult {
  return html`<section>
    <h2>${label("job.before")}</h2>
    <a class="row opening" href=${link("compare", doc)}><span class="row-says">${label("compare.title")}</span>${chevron()}</a>
    <a class="row opening" href=${link("history", doc, everything)}><span class="row-says">${label("history.undo.last")}</span>${chevron()}</a>
  </section>`;
}

function things(doc: string): TemplateResult {
  const keptHere = view<Kept>(doc, "kept");
  if (!keptHere?.ok || keptHere.rigs.length + keptHere.types.length === 0) return html``;
  return html`<section>
    <h2>${label("job.things")}</h2>
    ${keptHere.rigs.map((rig) => html`<a class="row opening" href=${link("form", doc, `/now/rigs/${rig.id}`)}><span class="row-says">${rig.name || label("thing.unnamed")}</span>${chevron()}</a>`)}
    ${keptHere.types.map((one) => html`<a class="row opening" href=${link("form", doc, `/now/pileTypes/${one.id}`)}><span class="row-says">${one.name || label("thing.unnamed")}</span>${chevron()}</a>`)}
    <div class="acts"><button type="button" ?disabled=${readOnly.value} @click=${() => void keepThings(doc)}>${label("job.keepthings")}</button></div>
  </section>`;
}

async function keepThings(doc: string): Promise<void> {
  const answer = await ask<Answered & { parcel: Json }>(doc, "parcel", { all: true });
  if (!answer.ok) return;
  const { answer: done } = await enter(shelf, { do: "keep", parcel: answer.parcel }, undefined, 200);
  if (done.ok) notice.value = label("job.keptthings");
}

async function forget(doc: string): Promise<void> {
  await host.forget(doc);
  asking.value = "";
  if (current.peek() === doc) current.value = null;
  replace("jobs");
}
