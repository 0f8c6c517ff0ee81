// How a number came about: the formula in symbols, the same with values, the
// result, where it is from, and on to the numbers it uses.
import { html, nothing, type TemplateResult } from "lit-html";
import { clock } from "./clock.ts";
import { view } from "./data.ts";
import { chevron } from "./form.ts";
import { frame } from "./frame.ts";
import { statedActs } from "./history.ts";
import { label } from "./labels.ts";
import { workingLink } from "./number.ts";
import { trialArgs, tries } from "./trial.ts";
import { formula, minus, symbol, unitText } from "./symbols.ts";
import type { Source, Working, WorkingInput } from "./views.ts";

export function workingScreen(doc: string, step: string, pile: string | undefined): TemplateResult {
  const working = view<Working>(doc, "working", { step, ...(pile ? { pile } : {}), ...trialArgs(doc, pile) });
  const shown = working?.ok ? working : undefined;
  return frame({
    name: "working",
    over: label(tries(doc, pile).length > 0 ? "trial.working" : "working.title"),
    title: shown ? shown.title : label("working.title"),
    doc,
    body: shown ? body(doc, pile, shown) : html`<p class="lead">${working?.says ?? label("core.starting")}</p>`,
  });
}

function body(doc: string, pile: string | undefined, w: Working): TemplateResult {
  return html`${w.shown || w.result ? html`<p class="shown">${minus(unitText(w.shown || w.result))}</p>` : nothing}
    ${w.formula
      ? html`<section class="steps">
          <p class="step">${formula(w.formula)}</p>
          ${w.values ? html`<p class="step"><span class="lhs">${symbol(w.symbol)}</span> = ${formula(w.values)}</p>` : nothing}
          ${w.result ? html`<p class="step"><span class="lhs">${symbol(w.symbol)}</span> = <strong class="result">${minus(unitText(w.result))}</strong></p>` : nothing}
        </section>`
      : nothing}
    ${w.stated ? stated(doc, w.stated) : nothing}
    ${w.inputs?.length
      ? html`<section>
          <h2>${label("working.inputs")}</h2>
          ${w.inputs.map((input) => inputRow(doc, pile, input))}
        </section>`
      : nothing}
    ${w.proofs?.length
      ? html`<section>
          <h2>${label("working.proofs")}</h2>
          ${w.proofs.map((proof) => html`<div class="proof">
                <p>${proof.title}</p>
                <p>${formula(proof.formula)}</p>
                <p>${formula(proof.says)}</p>
                <p><strong>${label(proof.holds ? "working.holds" : "working.fails")}</strong></p>
              </div>`)}
        </section>`
      : nothing}
    ${w.source ? sourcePart(w.source, w.source.title ?? label("working.source")) : nothing}
    <div class="acts"><button type="button" @click=${() => print()}>${label("print")}</button></div>`;
}

function inputRow(doc: string, pile: string | undefined, input: WorkingInput): TemplateResult {
  const inner = html`<span class="in-symbol">${symbol(input.symbol)}</span><span class="in-name">${input.name}</span
    ><span class="in-says">${minus(unitText(input.says))}</span>`;
  return input.open
    ? html`<a class="row opening in" href=${workingLink(doc, pile, input.open)}>${inner}${chevron()}</a>`
    : html`<div class="row in">${inner}</div>`;
}

function stated(doc: string, s: NonNullable<Working["stated"]>): TemplateResult {
  return html`<section>
    <h2>${label("working.stated")}</h2>
    <dl class="facts">
      ${fact(label("working.typed"), s.typed)} ${fact(label("working.conversion"), s.conversion)}
      ${fact(label("working.basis"), s.basis)} ${fact(label("working.by"), s.by)} ${fact(label("working.at"), s.at ? clock(s.at) : "")}
    </dl>
    ${s.path ? statedActs(doc, s.path) : nothing}
  </section>`;
}

function sourcePart(source: Source, title: string): TemplateResult {
  return html`<section class="source">
    <h2>${title}</h2>
    <p>${[source.document, source.edition, source.clause].filter((part) => part && part !== "none" && part !== source.mark).join(", ")}</p>
    <p class="mark">${source.mark}</p>
  </section>`;
}

function fact(name: string, value: string | undefined): unknown {
  return value ? html`<div><dt>${name}</dt><dd>${minus(value)}</dd></div>` : nothing;
}
