// A job pasted as text.
import { html, type TemplateResult } from "lit-html";
import * as files from "../files.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { opened } from "./opened.ts";

export function pasteScreen(): TemplateResult {
  const open = () => {
    const text = (document.getElementById("pasted") as HTMLTextAreaElement).value;
    if (text.trim() !== "") void files.openText(text).then(opened);
  };
  return frame({
    name: "paste",
    title: label("more.paste"),
    body: html`<div class="field">
        <label for="pasted">${label("paste.label")}</label>
        <textarea id="pasted" class="box" rows="8" spellcheck="false" autocapitalize="off"></textarea>
      </div>
      <div class="acts"><button type="button" class="main-act" @click=${open}>${label("paste.open")}</button></div>`,
  });
}
