// One field of the core as an edit box, a choice or a list, with what the core
// understood beside it. The box keeps what was typed.
import { html, nothing, svg, type TemplateResult } from "lit-html";
import { live } from "lit-html/directives/live.js";
import type { Json } from "../protocol.ts";
import { pickFile } from "../pick.ts";
import { readOnly } from "../signals.ts";
import { contestedLine } from "./choices.ts";
import { enter } from "./data.ts";
import { answered, chooseUnit, draftOf, drop, left, sent, typing, unitChosen } from "./fieldstate.ts";
import { historyLink } from "./history.ts";
import { label } from "./labels.ts";
import { link } from "./route.ts";
import { unitText } from "./symbols.ts";
import { trialKey, tryChoice, tryText } from "./trial.ts";
import { askedAt, twoWays } from "./turns.ts";
import type { Field, Offer, Problem } from "./views.ts";

type Shown = TemplateResult | typeof nothing;
export type Show = { view: string; [name: string]: Json };

/** Where an edit goes: the document, and the view that shows the outcome. */
export interface Target {
  doc: string;
  show: Show;
  /** The pile on which this is only tried. */
  trial?: string;
}

async function type(target: Target, field: Field, typed: string, entered = typed): Promise<void> {
  const { path } = field;
  const key = keyOf(target, path);
  if (target.trial !== undefined) return tryText(target.doc, target.trial, key, path, typed, entered);
  typing(key, typed, stood(field));
  sent(key);
  const { answer } = await enter(target.doc, { do: "type", path, typed: entered, or: draftOf(key)?.from }, target.show);
  const taken = answer.ok || answer.code === "core-unavailable";
  answered(key, taken, (answer["problem"] as Problem | undefined) ?? (taken ? null : { says: answer.says ?? "" }));
}

/** What stands there, as a text that could be typed. */
function stood(field: Field): string {
  return field.state === "given" && field.kind === "quantity" ? `${field.typed} ${field.unit}` : field.typed;
}

function keyOf(target: Target, path: string): string {
  return `${target.trial === undefined ? target.doc : trialKey(target.doc)} ${path}`;
}

async function choose(target: Target, path: string, value: string): Promise<void> {
  if (target.trial !== undefined) await tryChoice(target.doc, target.trial, path, value);
  else await enter(target.doc, { do: "choose", path, value }, target.show);
}

/** An edit box and what it does; one template for all, so that a box keeps its focus when its field arrives. */
export interface Box {
  id: string;
  /** Names the draft. */
  key: string;
  /** Where the value stands in the job, once that is known. */
  path?: string;
  typed: string;
  mode: "text" | "decimal" | "numeric";
  invalid: boolean;
  input(typed: string): void;
}

export function editBox(of: Box): TemplateResult {
  return html`<input
    id=${of.id}
    data-path=${of.path ?? nothing}
    class="box"
    type="text"
    inputmode=${of.mode}
    autocomplete="off"
    autocapitalize="off"
    spellcheck="false"
    enterkeyhint="done"
    aria-describedby=${`${of.id}-echo ${of.id}-problem`}
    aria-invalid=${of.invalid ? "true" : "false"}
    ?readonly=${readOnly.value}
    .value=${live(draftOf(of.key)?.typed ?? of.typed)}
    @input=${(event: InputEvent) => of.input((event.target as HTMLInputElement).value)}
    @blur=${() => left(of.key)}
    @keydown=${blurOnEnter}
  />`;
}

/** A box of several lines: points, typed or pasted. */
function linesBox(of: Box): TemplateResult {
  return html`<textarea id=${of.id} data-path=${of.path ?? nothing} class="box" rows="8" autocomplete="off" autocapitalize="off" spellcheck="false"
    aria-describedby=${`${of.id}-echo ${of.id}-problem`} aria-invalid=${of.invalid ? "true" : "false"} ?readonly=${readOnly.value}
    .value=${live(draftOf(of.key)?.typed ?? of.typed)}
    @input=${(event: InputEvent) => of.input((event.target as HTMLTextAreaElement).value)} @blur=${() => left(of.key)}></textarea>`;
}

/** The edit box of a field. `id` ties it to its label. */
export function box(target: Target, field: Field, id: string): TemplateResult {
  return editBox(boxOf(target, field, id));
}

export function boxOf(target: Target, field: Field, id: string): Box {
  return {
    id,
    key: keyOf(target, field.path),
    path: field.path,
    typed: field.typed,
    mode: field.kind === "text" || field.minus ? "text" : field.kind === "count" ? "numeric" : "decimal",
    invalid: problemOf(target, field) !== null,
    input: (typed) => void type(target, field, typed, withUnit(target, field, typed)),
  };
}

/**
 * The text to enter for what was typed. A box that was cleared keeps the unit
 * it had: "0.9" typed anew beside MN is 0.9 MN.
 */
function withUnit(target: Target, field: Field, typed: string): string {
  if (field.kind !== "quantity") return typed;
  const key = keyOf(target, field.path);
  if (/[a-z%]/i.test(typed)) {
    chooseUnit(key, undefined);
    return typed;
  }
  if (field.state === "given" && unitChosen(key) === undefined) chooseUnit(key, field.unit);
  const unit = unitChosen(key);
  return typed.trim() !== "" && unit && unit !== field.unit ? `${typed.trim()} ${unit}` : typed;
}

export function blurOnEnter(event: KeyboardEvent): void {
  if (event.key === "Enter") (event.target as HTMLElement).blur();
}

/** What the core read, "= 900 kN"; the special values in words. */
export function echo(field: Field, id: string): TemplateResult {
  const text = field.state === "not known" || field.state === "not applicable" ? field.echo || field.state : field.echo && field.kind !== "text" ? `= ${unitText(field.echo)}` : "";
  return html`<span class="echo" id=${`${id}-echo`}>${text}</span>`;
}

/** The units a value may be given in, as the device's own list. */
export function unitChooser(target: Target, field: Field, id: string): Shown {
  const units = field.units ?? [];
  if (units.filter((unit) => unit !== "").length < 2) return field.unit ? html`<span class="unit">${unitText(field.unit)}</span>` : nothing;
  const key = keyOf(target, field.path);
  const chosen = unitChosen(key) ?? field.unit;
  const pick = (event: Event) => {
    const unit = (event.target as HTMLSelectElement).value;
    chooseUnit(key, unit);
    if (field.state === "given") void type(target, field, field.typed, `${field.typed.trim()} ${unit}`).then(() => left(key));
  };
  return html`<select class="unit" aria-label=${label("field.unit", { name: field.label })} id=${`${id}-unit`} ?disabled=${readOnly.value} @change=${pick}>
    ${units.map((unit) => html`<option value=${unit} .selected=${live(unit === chosen)}>${unitText(unit)}</option>`)}
  </select>`;
}

/** The sentence about text that could not be read, with the readings it may have. */
export function problemBand(target: Target, field: Field, id: string): TemplateResult {
  const problem = problemOf(target, field);
  const asked = target.trial === undefined ? askedAt(target.doc, field.path) : undefined;
  return html`<div class="problem" id=${`${id}-problem`} aria-live="polite">
    ${problem || asked
      ? html`<p>${asked?.says ?? problem?.says}</p>
          ${problem?.offers?.length
            ? html`<div class="offers">
                ${problem.offers.map((offer) => html`<button type="button" @click=${() => void takeOffer(target, field, offer)}>${offer.label}</button>`)}
              </div>`
            : nothing}`
      : nothing}
  </div>${asked ? twoWays(asked) : nothing}`;
}

function problemOf(target: Target, field: Field): Problem | null {
  return field.problem ?? draftOf(keyOf(target, field.path))?.problem ?? null;
}

async function takeOffer(target: Target, field: Field, offer: Offer): Promise<void> {
  const key = keyOf(target, field.path);
  if (offer.decimalSign) {
    // The core reads again by itself what it could not read before.
    if (target.trial !== undefined) await tryChoice(target.doc, target.trial, "/now/decimalSign", offer.decimalSign);
    else await enter(target.doc, { do: "sign", sign: offer.decimalSign }, target.show);
    drop(key);
    return;
  }
  await type(target, field, offer.typed);
  left(key);
}

/** A field of a form with its label, its box or choices, and its hint. */
export function formField(target: Target, field: Field, id: string): TemplateResult {
  const choices = field.kind === "choice" || field.kind === "reference";
  return html`<div class="field kind-${field.kind}">
    ${choices ? choiceField(target, field, id) : boxField(target, field, id)} ${contestedLine(target.doc, field.contested)}
    ${field.hint ? html`<p class="hint">${field.hint}</p>` : nothing}
    ${field.basis ? html`<p class="hint"><a href=${link("working", target.doc, field.basis.open)}>${field.basis.says} <span class="mark">(${field.basis.mark})</span></a></p>` : nothing}
  </div>`;
}

function boxField(target: Target, field: Field, id: string): TemplateResult {
  return html`<label for=${id}>${field.label}</label>
    <div class="entry">${field.kind === "lines" ? linesBox(boxOf(target, field, id)) : box(target, field, id)}${unitChooser(target, field, id)}${echo(field, id)}${toHistory(target, field)}</div>
    ${field.kind === "lines" ? html`<div class="acts"><button type="button" ?disabled=${readOnly.value} @click=${() => void fromFile(target, field)}>${label("bring.file")}</button></div>` : nothing}
    ${specials(target, field)} ${problemBand(target, field, id)}`;
}

/** The text of a file as if it had been pasted. */
async function fromFile(target: Target, field: Field): Promise<void> {
  const file = await pickFile();
  if (!file) return;
  const bytes = new Uint8Array(await file.arrayBuffer());
  const wide = bytes[0] === 0xff && bytes[1] === 0xfe ? "utf-16le" : bytes[0] === 0xfe && bytes[1] === 0xff ? "utf-16be" : "utf-8";
  await type(target, field, new TextDecoder(wide).decode(bytes));
  left(keyOf(target, field.path));
}

/** The way to what was stated here before. */
function toHistory(target: Target, field: Field): Shown {
  return field.state === "blank" || target.trial !== undefined ? nothing : historyLink(target.doc, field.path, field.label);
}

/** "not known" and the like: typed as their text; pressed again, the field is blank. */
function specials(target: Target, field: Field): Shown {
  if (!field.others?.length) return nothing;
  return html`<div class="choices specials">
    ${field.others.map((other) => {
      const on = field.state === other.value;
      return html`<button type="button" class="choice" aria-pressed=${on ? "true" : "false"} ?disabled=${readOnly.value}
        @click=${() => void type(target, field, on ? "" : other.value).then(() => left(keyOf(target, field.path)))}>
        ${tick(on)}${other.label}
      </button>`;
    })}
  </div>`;
}

function choiceField(target: Target, field: Field, id: string): TemplateResult {
  const all = [...(field.choices ?? []), ...(field.others ?? [])];
  if (all.length > 5) {
    return html`<label for=${id}>${field.label}</label>
      <div class="entry">
        <select class="box" id=${id} ?disabled=${readOnly.value} @change=${(event: Event) => void choose(target, field.path, (event.target as HTMLSelectElement).value)}>
          <option value="" .selected=${live(field.typed === "")}>${label("field.choose")}</option>
          ${all.map((one) => html`<option value=${one.value} .selected=${live(one.value === field.typed)}>${one.label}</option>`)}
        </select>
        ${toHistory(target, field)}
      </div>
      ${problemBand(target, field, id)}`;
  }
  return html`<div role="group" aria-labelledby=${`${id}-label`}>
    <p class="label" id=${`${id}-label`}>${field.label}</p>
    ${all.length === 0 ? html`<p class="hint">${label("field.nochoice")}</p>` : nothing}
    <div class="choices">
      ${all.map((one) => {
        const on = one.value === field.typed;
        return html`<button type="button" class="choice" aria-pressed=${on ? "true" : "false"} ?disabled=${readOnly.value}
          @click=${() => void choose(target, field.path, on ? "" : one.value)}>${tick(on)}${one.label}</button>`;
      })}
      ${toHistory(target, field)}
    </div>
    ${problemBand(target, field, id)}
  </div>`;
}

/** A ring, filled when chosen: shape, not colour. */
export function tick(on: boolean): TemplateResult {
  return html`<svg class="tick" width="18" height="18" viewBox="0 0 18 18" aria-hidden="true">
    <circle cx="9" cy="9" r="7.5"></circle>${on ? svg`<circle class="dot" cx="9" cy="9" r="4"></circle>` : nothing}
  </svg>`;
}
