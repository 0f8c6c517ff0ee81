// The piles, or the cutting list, leave as a table for a spreadsheet, or as
// plain text for a messenger.
import { signal } from "@preact/signals-core";
import { html, nothing, type TemplateResult } from "lit-html";
import * as files from "../files.ts";
import * as host from "../host.ts";
import { view } from "./data.ts";
import { tick } from "./fields.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { notice } from "./notice.ts";
import type { Info } from "./views.ts";

type What = "piles" | "cutting";

const what = signal<What>("piles");
const sign = signal("");
/** The list as text, where it could not be put on the clipboard. */
const plain = signal<{ doc: string; text: string } | null>(null);

export function handOutScreen(doc: string): TemplateResult {
  const info = view<Info>(doc, "info");
  const chosen = sign.value || (info?.ok && info.sign) || ofThisDevice();
  return frame({
    name: "hand-out",
    over: info?.ok ? info.title : "",
    title: label("handout.title"),
    doc,
    body: html`<section>
        <h2 id="what">${label("handout.what")}</h2>
        <div class="choices" role="group" aria-labelledby="what">
          ${(["piles", "cutting"] as const).map((one) => choice(what.value === one, label(`handout.${one}`), () => (what.value = one)))}
        </div>
        <p>${label(`handout.${what.value}.says`)}</p>
      </section>
      <section>
        <h2 id="sign">${label("handout.sign")}</h2>
        <div class="choices" role="group" aria-labelledby="sign">
          ${[".", ","].map((one) => choice(chosen === one, label(one === "." ? "handout.point" : "handout.comma"), () => (sign.value = one)))}
        </div>
        <p>${label(chosen === "." ? "handout.point.says" : "handout.comma.says")}</p>
      </section>
      <div class="acts">
        <button type="button" class="main-act" @click=${() => void send(doc, chosen, false)}>${label("handout.save")}</button>
        <button type="button" @click=${() => void send(doc, chosen, true)}>${label("send.share")}</button>
        ${what.value === "cutting" ? html`<button type="button" @click=${() => void copy(doc, chosen)}>${label("handout.copy")}</button>` : nothing}
      </div>
      ${plain.value?.doc === doc
        ? html`<div class="field">
            <label for="plain">${label("handout.byhand")}</label>
            <textarea id="plain" class="box" rows="8" readonly .value=${plain.value.text}></textarea>
          </div>`
        : nothing}`,
  });
}

function choice(on: boolean, says: string, choose: () => void): TemplateResult {
  return html`<button type="button" class="choice" aria-pressed=${on ? "true" : "false"} @click=${() => { plain.value = null; choose(); }}>${tick(on)}${says}</button>`;
}

/** The decimal sign of the language that the device speaks. */
function ofThisDevice(): string {
  return (1.5).toLocaleString().includes(",") ? "," : ".";
}

async function send(doc: string, sign: string, share: boolean): Promise<void> {
  const { answer, bytes } = await host.showBytes(doc, "export", { what: what.peek(), sign, bytes: "text" });
  if (!answer.ok || !bytes) return refused(answer.says);
  const { how, says } = await files.sendTable(bytes, typeof answer["name"] === "string" ? answer["name"] : "table.csv", { share });
  if (how === "refused") refused(says);
  else notice.value = how === "left" ? label("send.left") : "";
}

function refused(says: string | undefined): void {
  notice.value = says ?? label("send.refused");
}

/** The clipboard is asked for at once, while the tap counts; the text comes after. */
async function copy(doc: string, sign: string): Promise<void> {
  const text = host.showBytes(doc, "export", { what: "cutting", sign, bytes: "plain" }).then(({ answer, bytes }) => {
    if (!answer.ok || !bytes) throw new Error(answer.says ?? label("send.refused"));
    return new TextDecoder().decode(bytes);
  });
  try {
    const blob = text.then((said) => new Blob([said], { type: "text/plain" }));
    await navigator.clipboard.write([new ClipboardItem({ "text/plain": blob })]);
    notice.value = label("handout.copied");
  } catch {
    await text.then(
      (said) => (plain.value = { doc, text: said }),
      (problem: Error) => refused(problem.message),
    );
  }
}
