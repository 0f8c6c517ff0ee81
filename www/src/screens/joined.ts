// Two copies of one job are put together, and the screen that says what came.
import { signal } from "@preact/signals-core";
import { html, nothing, type TemplateResult } from "lit-html";
import * as host from "../host.ts";
import type { Full } from "../host.ts";
import { docs, readOnly } from "../signals.ts";
import { clock } from "./clock.ts";
import { choicesRow } from "./choices.ts";
import { differenceList } from "./compare.ts";
import { changed } from "./data.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { lookAt } from "./opened.ts";
import { go } from "./route.ts";
import type { Answered, Difference } from "./views.ts";

interface Joined extends Answered {
  entries?: number;
  lines?: number;
  differences?: Difference[];
  differenceCount?: number;
  choices?: number;
  damage?: string[];
  problems?: string[];
}

/** The last answer, with the document it is about. */
const last = signal<{ doc: string; answer: Joined } | null>(null);
/** One at a time: a second tap while the first is under way does nothing. */
const under = signal(false);

/** A job id that no other device can have given to another job. */
const unique = /^[0-9a-f]{8}-[0-9a-f]{4}-/;

/** Buttons that put an opened file together with a copy that is here. */
export function joinActs(opened: string, bytes: Uint8Array, job: string, known: string[]): TemplateResult[] {
  if (!unique.test(job)) return [];
  return known.map(
    (here) => html`<button type="button" class="main-act join" ?disabled=${readOnly.value || under.value} @click=${() => void join(opened, bytes, here)}>
      ${known.length === 1 ? label("joined.do") : label("joined.do.with", { at: whenChanged(here) })}
    </button>`,
  );
}

function whenChanged(doc: string): string {
  const info = docs.value.get(doc);
  const at = info?.changedAt ?? info?.filedAt ?? info?.savedAt;
  return at ? clock(at) : label("jobs.untitled");
}

async function join(opened: string, bytes: Uint8Array, here: string): Promise<void> {
  if (under.peek()) return;
  under.value = true;
  const full: Full = await host.enter(here, { do: "join" }, { bytes });
  under.value = false;
  last.value = { doc: here, answer: full.answer as unknown as Joined };
  changed(here);
  if (full.answer.ok) void host.close(opened);
  go("joined", here);
}

export function joinedScreen(doc: string): TemplateResult {
  const now = last.value?.doc === doc ? last.value.answer : undefined;
  return frame({
    name: "joined",
    over: docs.value.get(doc)?.title || label("job.job"),
    title: label("joined.title"),
    doc,
    body: html`${now ? (now.ok ? came(doc, now) : refused(now)) : html`<p class="lead">${label("joined.none")}</p>`}
      ${doc !== "" ? html`<div class="acts"><button type="button" class="main-act" @click=${() => void lookAt(doc)}>${label("joined.look")}</button></div>` : nothing}`,
  });
}

function refused(answer: Joined): TemplateResult {
  return html`<p class="lead">${label("joined.refused")}</p>
    <p>${answer.says ?? ""}</p>`;
}

function came(doc: string, answer: Joined): TemplateResult {
  // An answer made again after the calculation was replaced has no counts.
  const counted = answer.entries !== undefined;
  const nothingNew = counted && answer.entries === 0 && answer.lines === 0;
  const differences = answer.differences ?? [];
  return html`<p class="lead">${label(nothingNew ? "joined.nothing" : "joined.done")}</p>
    ${counted
      ? html`<dl class="facts tally">
          <div><dt>${label("joined.entries")}</dt><dd>${answer.entries}</dd></div>
          <div><dt>${label("joined.lines")}</dt><dd>${answer.lines}</dd></div>
        </dl>`
      : nothing}
    ${answer.choices ? choicesRow(doc, answer.choices) : nothing}
    ${sentences(label("joined.problems"), answer.problems)} ${sentences(label("joined.damage"), answer.damage)}
    ${differences.length > 0 ? differenceList(label("joined.differences"), differences, answer.differenceCount ?? differences.length) : nothing}`;
}

function sentences(title: string, list: string[] | undefined): TemplateResult | typeof nothing {
  if (!list?.length) return nothing;
  return html`<section>
    <h2>${title}</h2>
    <ul class="plain">${list.map((one) => html`<li>${one}</li>`)}</ul>
  </section>`;
}
