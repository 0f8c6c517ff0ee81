// The first screen: two readings and five rows.
import { html, nothing, type TemplateResult } from "lit-html";
import { core, readOnly } from "../signals.ts";
import { boxOf, editBox, formField, problemBand, unitChooser, type Target } from "./fields.ts";
import { view } from "./data.ts";
import { choicesBand, contestedLine } from "./choices.ts";
import { bands, statusLine } from "./frame.ts";
import { draftOf } from "./fieldstate.ts";
import { label } from "./labels.ts";
import { number } from "./number.ts";
import { reading } from "./reading.ts";
import { link } from "./route.ts";
import * as route from "./route.ts";
import { arrow } from "./frame.ts";
import { cold, current, early, kept, offered, startNew, takeUp, typeEarly } from "./sizingstate.ts";
import { minus, unitText } from "./symbols.ts";
import { triedSizing, tries, useTrial } from "./trial.ts";
import type { Sizing, SizingRow } from "./views.ts";

type Shown = TemplateResult | typeof nothing;

/** The sizing under work. */
export function firstScreen(): TemplateResult {
  const doc = current.value;
  const sizing = doc === null ? undefined : view<Sizing>(doc, "sizing");
  return page(doc, undefined, sizing?.ok ? sizing : undefined, firstHead(sizing?.ok ? sizing.title : ""));
}

/** "What if" on one pile of a job: the same screen, and nothing of it is entered before "use this". */
export function pileSizing(doc: string, pile: string): TemplateResult {
  const stands = view<Sizing>(doc, "sizing", { pile, tries: true });
  const sizing = triedSizing(doc, pile) ?? stands;
  const head = html`<header class="head">
    <button type="button" class="back" @click=${route.back} aria-label=${label("nav.back")}>${arrow()}</button>
    <div class="head-title"><p class="over">${label("trial.says")}</p><h1 id="title" tabindex="-1">${label("trial.title")}</h1></div>
    <button type="button" class="main-act" ?disabled=${readOnly.value || tries(doc, pile).length === 0} @click=${() => void useTrial(doc, pile)}>${label("trial.use")}</button>
  </header>`;
  return page(doc, pile, sizing?.ok ? sizing : undefined, head, sizing && !sizing.ok ? sizing.says : undefined);
}

function page(doc: string | null, pile: string | undefined, sizing: Sizing | undefined, head: TemplateResult, says = ""): TemplateResult {
  const offer = doc === null ? offered.value : null;
  return html`<div class="page sizing">
    ${head} ${bands()} ${offer ? offerBand(offer.last) : nothing} ${choicesBand(doc ?? "", sizing?.choicesSay)}
    <main class="main">
      ${reading(doc ?? "", pile, sizing, says || (offer ? label(readOnly.value ? "readonly.says" : "sizing.offered") : label("core.starting")))}
      <div class="rows">${rowsOf(sizing).map((row) => oneRow(doc, pile, row))}</div>
      ${pile !== undefined && doc !== null && sizing?.tries ? html`<section class="fields tries">
        <h2>${label("trial.more")}</h2>
        ${sizing.tries.map((field, i) => formField({ doc, show: { view: "sizing" }, trial: pile }, field, `try-${i}`))}
      </section>` : nothing}
      ${cautions(sizing)}
    </main>
    ${statusLine(doc ?? undefined)}
  </div>`;
}

function firstHead(title: string): TemplateResult {
  return html`<header class="head">
    <div class="head-title">${title ? html`<p class="over">${title}</p>` : nothing}<h1 id="title" tabindex="-1">${label("reading.set")}</h1></div>
    ${jobPlace()}
    <a class="button" href=${link("more")}>${label("nav.more")}</a>
  </header>`;
}

/** One place: the example where nothing is kept, else the piles of the last job. */
function jobPlace(): Shown {
  if (cold.value) {
    return core.value.state === "unavailable" ? nothing : html`<a class="button" href=${link("example")}>${label("nav.example")}</a>`;
  }
  if (offered.value && current.value === null) return nothing;
  const doc = current.value;
  const job = kept.value.find((info) => info.doc !== doc && info.title !== "");
  return job
    ? html`<a class="button" href=${link("piles", job.doc)}>${label("nav.piles")}</a>`
    : html`<a class="button" href=${link("jobs")}>${label("nav.jobs")}</a>`;
}

function offerBand(last: string): TemplateResult {
  return html`<div class="band offer">
    <p><span class="over">${label("sizing.last")}</span> ${minus(last)}</p>
    <div class="band-acts">
      <button type="button" class="main-act" @click=${takeUp}>${label("sizing.takeup")}</button>
      ${readOnly.value ? nothing : html`<button type="button" @click=${() => void startNew()}>${label("sizing.startnew")}</button>`}
    </div>
  </div>`;
}

/** Rows as answered, or the same rows empty. */
function rowsOf(sizing: Sizing | undefined): SizingRow[] {
  if (sizing) return sizing.rows;
  return [
    { id: "load", label: label("row.load") },
    { id: "factor", label: label("row.factor") },
    { id: "rig", label: label("row.rig") },
    { id: "pile", label: label("row.pile") },
    { id: "limits", label: label("row.limits") },
  ];
}

function oneRow(doc: string | null, pile: string | undefined, row: SizingRow): Shown {
  // On a pile of a job these two are tried below.
  if (pile !== undefined && (row.id === "rig" || row.id === "pile")) return nothing;
  if (!row.path && (row.id === "load" || row.id === "factor")) return typedRow(doc, pile, row);
  return openingRow(doc, pile, row);
}

function typedRow(doc: string | null, pile: string | undefined, row: SizingRow): TemplateResult {
  const id = `row-${row.id}`;
  const field = row.field;
  const target: Target = { doc: doc ?? "", show: { view: "sizing" }, ...(pile === undefined ? {} : { trial: pile }) };
  const box =
    field && doc !== null && draftOf(early + row.id) === undefined
      ? boxOf(target, field, id)
      : { id, key: early + row.id, typed: "", mode: "decimal" as const, invalid: false, input: (typed: string) => typeEarly(row.id, typed) };
  const echoed = field?.state === "given" ? `= ${unitText(field.echo)}` : field?.state === "not known" ? field.state : "";
  // A factor has no unit: there its number stands and opens who says so.
  const opening = row.id === "factor" && field?.state === "given" && draftOf(box.key)?.typed !== "";
  return html`<div class="row typed">
    <label for=${id}>${row.label}</label>
    <span class="echo" id=${`${id}-echo`}>${opening || draftOf(box.key)?.typed === "" ? "" : echoed}</span>
    <div class="entry">${editBox(box)}${field ? unitChooser(target, field, id) : nothing}${opening ? number(doc ?? "", pile, { says: echoed, unit: "", open: field.path }) : html`<span></span>`}</div>
    ${field ? problemBand(target, field, id) : html`<div class="problem" id=${`${id}-problem`} aria-live="polite"></div>`}
    ${contestedLine(doc ?? "", field?.contested)}
  </div>`;
}

function openingRow(doc: string | null, pile: string | undefined, row: SizingRow): TemplateResult {
  const says = row.says ?? "";
  const idle = row.id === "limits" && (doc === null || says === "");
  const inner = html`<span class="row-label">${row.label}</span>
    <span class="row-says ${says ? "" : "need"} ${row.bad ? "bad" : ""}">${says || (idle ? label("row.none") : (row.need ?? label("row.choose")))}</span>`;
  if (idle) return html`<div class="row idle">${inner}</div>`;
  const to = row.id === "limits" ? "limits" : row.id === "rig" ? "pick-rig" : "pick-pile";
  const place = row.path && doc ? link("form", doc, row.path) : pile && doc ? link(to, doc, pile) : doc ? link(to, doc) : link(to);
  return html`<a class="row opening" href=${readOnly.value && row.id !== "limits" ? link() : place}>${inner}<svg class="chevron" width="12" height="20" viewBox="0 0 12 20" aria-hidden="true"><path d="M2 2L10 10L2 18"></path></svg></a>`;
}

function cautions(sizing: Sizing | undefined): Shown {
  if (!sizing || sizing.state !== "open" || sizing.cautions.length === 0) return nothing;
  return html`<ul class="cautions">
    ${sizing.cautions.map((line) => html`<li>${line}</li>`)}
  </ul>`;
}
