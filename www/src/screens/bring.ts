// A table of piles comes in: pasted, typed, picked or dropped.
import { html, nothing, type TemplateResult } from "lit-html";
import { live } from "lit-html/directives/live.js";
import { pickFile } from "../pick.ts";
import { lookAtTable, written } from "./bringstate.ts";
import { view } from "./data.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { notice } from "./notice.ts";
import type { Info } from "./views.ts";

export function bringScreen(doc: string): TemplateResult {
  const info = view<Info>(doc, "info");
  const typed = written.value.trim() !== "";
  return frame({
    name: "bring",
    over: info?.ok ? info.title : "",
    title: label("bring.title"),
    doc,
    body: html`<p class="lead">${label("bring.lead")}</p>
      <div class="field">
        <label for="table">${label("bring.box")}</label>
        <textarea id="table" class="box" rows="6" wrap="off" spellcheck="false" autocapitalize="off" .value=${live(written.value)} aria-describedby="table-kept"
          @input=${(event: Event) => (written.value = (event.target as HTMLTextAreaElement).value)} @paste=${(event: ClipboardEvent) => pasted(doc, event)}></textarea>
        <p class="hint" id="table-kept">${typed ? label("bring.kept") : nothing}</p>
      </div>
      <div class="acts">
        <button type="button" class="main-act" ?disabled=${!typed} @click=${() => look(doc, written.value)}>${label("bring.show")}</button>
        <button type="button" @click=${() => void pick(doc)}>${label("bring.file")}</button>
      </div>`,
  });
}

/** So long a text is not put into the box: the browser would lay out every line of it [characters]. */
const long = 20_000;

/** A table pasted into the empty box is looked at without a further tap. */
function pasted(doc: string, event: ClipboardEvent): void {
  const text = event.clipboardData?.getData("text/plain") ?? "";
  const box = event.target as HTMLTextAreaElement;
  const whole = box.value.slice(0, box.selectionStart) + text + box.value.slice(box.selectionEnd);
  const alone = box.value.trim() === "" && text.trim().includes("\n");
  if (!alone && whole.length < long) return;
  event.preventDefault();
  look(doc, whole);
}

function look(doc: string, text: string): void {
  if (text.trim() !== "") lookAtTable(doc, new TextEncoder().encode(text));
}

async function pick(doc: string): Promise<void> {
  try {
    const file = await pickFile();
    if (file) lookAtTable(doc, new Uint8Array(await file.arrayBuffer()));
  } catch (problem) {
    notice.value = problem instanceof Error ? problem.message : String(problem);
  }
}
