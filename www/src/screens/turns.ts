// An edit that would turn the outcome of piles already pressed is asked about:
// a correction with a reason, or a copy for the piles to come.
import { html, nothing, type TemplateResult } from "lit-html";
import { uuids } from "../ids.ts";
import { enter, question, type Question } from "./data.ts";
import { drop } from "./fieldstate.ts";
import { back, go, route } from "./route.ts";
import { dropTrial } from "./trial.ts";

type Shown = TemplateResult | typeof nothing;

/** The question about a box or a choice of a form. */
export function askedAt(doc: string, path: string): Question | undefined {
  const asked = question.value;
  return asked?.doc === doc && asked.entry.path === path ? asked : undefined;
}

/** The question about an edit that was made elsewhere, for the band on top. */
export function askedOnTop(): Shown {
  const asked = question.value;
  if (!asked || (/^(type|choose)$/.test(asked.entry.do) && route.value[0] !== "choices")) return nothing;
  return html`<div class="band" role="alert">
    <p>${asked.says}</p>
    ${twoWays(asked)}
  </div>`;
}

/** A reason and its button, the other way where there is one, and the way back. */
export function twoWays(asked: Question): TemplateResult {
  const { turns } = asked;
  const reason = () => (document.getElementById("turns-why") as HTMLInputElement).value;
  return html`<div class="turns">
    <label for="turns-why">${turns.reason}</label>
    <input class="box" id="turns-why" type="text" autocomplete="off" />
    <button type="button" @click=${() => void again(asked, { correction: reason() })}>${turns.correct}</button>
    <p class="hint">${turns.correctSays}</p>
    ${turns.renew
      ? html`<button type="button" @click=${() => void again(asked, { renew: uuids(turns.ids ?? 0) })}>${turns.renew}</button>
          <p class="hint">${turns.renewSays}</p>`
      : nothing}
    <button type="button" @click=${() => settled(asked)}>${turns.leave}</button>
  </div>`;
}

/** The question is done with, and what was typed for it. */
function settled({ doc, entry }: Question): void {
  question.value = null;
  drop(`${doc} ${entry.path}`);
}

/** The same entry with the answer. */
async function again(asked: Question, by: { correction: string } | { renew: string[] }): Promise<void> {
  const { doc, entry, show, ids, bytes } = asked;
  const { answer } = await enter(doc, { ...entry, ...by }, show, ids, bytes);
  if (!answer.ok) return;
  settled(asked);
  if (entry.do === "use") {
    dropTrial();
    back();
  } else if (typeof answer["renewed"] === "string" && route.peek()[0] === "form") go("form", doc, answer["renewed"]);
}
