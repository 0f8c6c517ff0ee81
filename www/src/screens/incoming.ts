// A file that came in and needs a word: it could not be read, it is complained
// about, or its job is on this device already.
import { html, nothing, type TemplateResult } from "lit-html";
import * as host from "../host.ts";
import { frame } from "./frame.ts";
import { joinActs } from "./joined.ts";
import { label } from "./labels.ts";
import { incoming, lookAt } from "./opened.ts";
import { back } from "./route.ts";
import type { Complaint } from "./views.ts";

export function incomingScreen(): TemplateResult {
  const file = incoming.value;
  return frame({
    name: "incoming",
    title: file?.title || label("incoming.title"),
    ...(file?.ok && file.known.length === 0 ? { doc: file.doc } : {}),
    body: file
      ? html`
          ${file.ok ? nothing : html`<p class="lead">${label("incoming.refused")}</p>`} ${file.says && file.complaints.length === 0 ? html`<p>${file.says}</p>` : nothing}
          ${file.known.length > 0 ? knownBand(file.doc, file.known, file.job, file.bytes) : file.ok ? html`<div class="acts"><button type="button" class="main-act" @click=${() => void lookAt(file.doc)}>${label("incoming.goon")}</button></div>` : nothing}
          ${file.complaints.length > 0 ? complaintList(file.complaints, file.count) : nothing}
        `
      : html`<p class="lead">${label("incoming.none")}</p>`,
  });
}

function knownBand(doc: string, known: string[], job: string, bytes: Uint8Array): TemplateResult {
  const here = known[0] as string;
  return html`<div class="band">
    <p>${label("incoming.known")}</p>
    <div class="band-acts">
      ${joinActs(doc, bytes, job, known)}
      <button type="button" @click=${() => void host.close(doc).then(() => lookAt(here))}>${label("incoming.usehere")}</button>
      <button type="button" @click=${() => void host.keep(doc).then(() => lookAt(doc))}>${label("incoming.keepboth")}</button>
      <button type="button" @click=${() => void host.close(doc).then(back)}>${label("incoming.drop")}</button>
    </div>
  </div>`;
}

/** A complaint about something that is not there has no line. */
function whereOf({ line, path }: Complaint): string {
  return line ? label("incoming.where", { line: String(line), path }) : path;
}

export function complaintList(complaints: Complaint[], count: number): TemplateResult {
  return html`<section class="complaints">
    <h2>${label("incoming.complaints", { count: String(count) })}</h2>
    <ol>
      ${complaints.map((one) => html`<li><p>${one.says}</p><p class="where">${whereOf(one)}</p></li>`)}
    </ol>
    ${complaints.length < count ? html`<p>${label("incoming.first", { shown: String(complaints.length), count: String(count) })}</p>` : nothing}
  </section>`;
}
