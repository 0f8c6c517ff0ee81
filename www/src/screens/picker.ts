// Pickers for rig and circuit, and for the pile type: what is kept on this
// device first, then what other jobs here hold.
import { html, nothing, type TemplateResult } from "lit-html";
import { readOnly } from "../signals.ts";
import { ask, enter, view, type Args } from "./data.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { go, link } from "./route.ts";
import * as route from "./route.ts";
import { begin, current, kept, shelf } from "./sizingstate.ts";
import type { Answered, Kept, KeptRig, KeptType, Sizing } from "./views.ts";
import type { Json } from "../protocol.ts";

interface Source {
  doc: string;
  title: string;
  kept: Kept;
}

/** Documents whose rigs and types are offered, each thing once. */
function sources(own: string | undefined): Source[] {
  const list: Source[] = [];
  const names = [own, shelf, ...kept.value.map((info) => info.doc)].filter((doc) => doc !== undefined);
  for (const doc of [...new Set(names)].slice(0, 12)) {
    const answer = view<Kept>(doc, "kept");
    if (!answer?.ok) continue;
    const title = doc === own ? label("pick.own") : doc === shelf ? label("pick.shelf") : (kept.value.find((info) => info.doc === doc)?.title ?? "");
    list.push({ doc, title: title || label("jobs.untitled"), kept: answer });
  }
  return list;
}

export function rigPicker(doc: string | undefined, pile: string | undefined): TemplateResult {
  const own = doc ?? current.value ?? undefined;
  const seen = new Set<string>();
  const parts = sources(own).map((source) => {
    const rigs = source.kept.rigs.filter((rig) => !seen.has(rig.id) && seen.add(rig.id));
    return rigs.length === 0 ? nothing : html`<section><h2>${source.title}</h2>${rigs.map((rig) => rigPart(source, rig, own, pile))}</section>`;
  });
  return frame({
    name: "picker",
    title: label("row.rig"),
    ...(own ? { doc: own } : {}),
    body: html`${parts.every((part) => part === nothing) ? html`<p class="lead">${label("pick.norig")}</p>` : parts}
      <div class="acts"><button type="button" ?disabled=${readOnly.value} @click=${() => void addKept("rig")}>${label("pick.newrig")}</button></div>`,
  });
}

function rigPart(source: Source, rig: KeptRig, own: string | undefined, pile: string | undefined): TemplateResult {
  return html`<div class="thing">
    <div class="thing-head">
      <div><h3>${rig.name || label("thing.unnamed")}</h3>${rig.says ? html`<p>${rig.says}</p>` : nothing}</div>
      <a class="button" href=${link("form", source.doc, `/now/rigs/${rig.id}`)} aria-label=${`${label("thing.edit")} ${rig.name}`}>${label("thing.edit")}</a>
    </div>
    ${rig.circuits.length === 0 ? html`<p class="hint">${label("pick.nocircuit")}</p>` : nothing}
    ${rig.circuits.map(
      (circuit) => html`<button type="button" class="pick" ?disabled=${readOnly.value}
        @click=${() => void take(source.doc, { rig: rig.id }, { rig: rig.id, circuit: circuit.id }, own, pile)}>
        <span class="pick-name">${circuit.name || label("thing.unnamed")}</span>
        <span class="pick-says">${circuit.says}</span>
        ${circuit.lacks?.length ? html`<span class="pick-lacks">${label("pick.lacks")} ${circuit.lacks.join(", ")}</span>` : nothing}
      </button>`,
    )}
  </div>`;
}

export function typePicker(doc: string | undefined, pile: string | undefined): TemplateResult {
  const own = doc ?? current.value ?? undefined;
  const seen = new Set<string>();
  const parts = sources(own).map((source) => {
    const types = source.kept.types.filter((one) => !seen.has(one.id) && seen.add(one.id));
    return types.length === 0 ? nothing : html`<section><h2>${source.title}</h2>${types.map((one) => typePart(source, one, own, pile))}</section>`;
  });
  return frame({
    name: "picker",
    title: label("row.pile"),
    ...(own ? { doc: own } : {}),
    body: html`${parts.every((part) => part === nothing) ? html`<p class="lead">${label("pick.notype")}</p>` : parts}
      <div class="acts"><button type="button" ?disabled=${readOnly.value} @click=${() => void addKept("type")}>${label("pick.newtype")}</button></div>`,
  });
}

function typePart(source: Source, one: KeptType, own: string | undefined, pile: string | undefined): TemplateResult {
  return html`<div class="pair">
    <button type="button" class="pick" ?disabled=${readOnly.value} @click=${() => void take(source.doc, { type: one.id }, { type: one.id }, own, pile)}>
      <span class="pick-name">${one.name || label("thing.unnamed")}</span><span class="pick-says">${one.says}</span>
    </button>
    <a class="button" href=${link("form", source.doc, `/now/pileTypes/${one.id}`)} aria-label=${`${label("thing.edit")} ${one.name}`}>${label("thing.edit")}</a>
  </div>`;
}

/** Copies what was chosen into the sizing and points its pile at it. */
async function take(from: string, what: Args, point: Record<string, string>, own: string | undefined, pile: string | undefined): Promise<void> {
  const answer = await ask<Answered & { parcel: Json }>(from, "parcel", what);
  if (!answer.ok) return;
  const doc = own ?? (await begin());
  const at = pile ?? (await ask<Sizing>(doc, "sizing")).pile;
  const done = await enter(doc, { do: "take", parcel: answer.parcel, ...point, ...(at ? { pile: at } : {}) }, pile ? { view: "sizing", pile } : { view: "sizing" }, 40);
  if (done.answer.ok || done.answer.code === "core-unavailable") route.back();
}

/** A new thing stands on the shelf and its form opens. */
async function addKept(what: "rig" | "type"): Promise<void> {
  const { answer } = await enter(shelf, { do: "add", what }, undefined, 8);
  if (typeof answer["added"] === "string") go("form", shelf, answer["added"]);
}
