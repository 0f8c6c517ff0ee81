// A job leaves: through the share sheet, or as a file.
import { html, type TemplateResult } from "lit-html";
import * as files from "../files.ts";
import { label } from "./labels.ts";
import { notice } from "./notice.ts";

export function sendActs(doc: string): TemplateResult {
  return html`<div class="acts">
    <button type="button" @click=${() => void send(doc, false)}>${label("send.save")}</button>
    <button type="button" @click=${() => void send(doc, true)}>${label("send.share")}</button>
  </div>`;
}

async function send(doc: string, share: boolean): Promise<void> {
  const { how, says } = await files.sendOut(doc, { share });
  notice.value = how === "left" ? label("send.left") : how === "refused" ? (says ?? label("send.refused")) : "";
}
