// The list of very many piles: one scroller as high as all its rows, of which
// only those in sight are drawn, and only the blocks around them asked for.
import { effect, signal } from "@preact/signals-core";
import { html, nothing, render, type TemplateResult } from "lit-html";
import { ref } from "lit-html/directives/ref.js";
import { repeat } from "lit-html/directives/repeat.js";
import { asked, view, type Args } from "./data.ts";
import { label } from "./labels.ts";
import { number } from "./number.ts";
import { link } from "./route.ts";
import { stateMark } from "./statemark.ts";
import { minus } from "./symbols.ts";
import type { PileRow, Piles } from "./views.ts";

/** From one row to the next [px]: 48 and 8 between. */
const pitch = 56;
const gap = 8;
/** Rows of one answer. */
export const block = 60;
/** Rows drawn beyond those in sight, on either side. */
const spare = 4;
/** The window moves by so many rows at a time. */
const stride = 3;

/** The first row in sight, of the list of a document. */
const top = signal({ doc: "", at: 0 });
/** What is listed. The rows are drawn by themselves: a scroll redraws nothing else. */
const listed = signal<{ doc: string; chosen: Args; count: number }>({ doc: "", chosen: {}, count: 0 });
/**
 * How many rows of the window are drawn with all they show: a list that flies
 * past shows the marks only, and fills up a few rows a frame once it rests.
 */
const filled = signal(Infinity);
/** A scroll by more rows than this at once is flying. */
const flying = 6;
const rowsAFrame = 4;
let resting: ReturnType<typeof setTimeout> | undefined;
let scroller: HTMLElement | undefined;
let stop = () => {};

/** The list begins anew, with other rows. */
export function toTop(): void {
  top.value = { doc: top.peek().doc, at: 0 };
  if (scroller) scroller.scrollTop = 0;
}

export function firstBlock(doc: string, chosen: Args): Piles | undefined {
  return view<Piles>(doc, "piles", { from: 0, count: block, ...chosen });
}

/** `count` rows of the piles that are `chosen`. */
export function pileRows(doc: string, chosen: Args, count: number): TemplateResult {
  const before = listed.peek();
  if (before.doc !== doc || before.count !== count || JSON.stringify(before.chosen) !== JSON.stringify(chosen)) listed.value = { doc, chosen, count };
  return html`<div class="pile-rows" role="table" tabindex="0" aria-label=${label("piles.title")} aria-rowcount=${count} ${ref(mounted)} @scroll=${scrolled} @keydown=${pressed}>
    <div class="pile-space" role="rowgroup" .style=${`height:${count * pitch - gap}px`}></div>
  </div>`;
}

/** A list that is drawn anew stands where it was left. Its height comes after it. */
function mounted(now: Element | undefined): void {
  stop();
  scroller = now as HTMLElement | undefined;
  const space = scroller?.firstElementChild as HTMLElement | undefined;
  if (!space) return;
  // The first rows are drawn with the screen, the rest once it stands.
  filled.value = rowsAFrame;
  requestAnimationFrame(fill);
  stop = effect(() => {
    render(rows(), space);
  });
  const { doc, at } = top.peek();
  if (doc === listed.peek().doc) queueMicrotask(() => scroller && (scroller.scrollTop = at * pitch));
}

function rows(): TemplateResult {
  const { doc, chosen } = listed.value;
  const [from, to] = inSight();
  const blocks = blocksOf(doc, chosen, from, to);
  const wide = matchMedia("(min-width: 900px)").matches;
  const list = Array.from({ length: to - from }, (_, i) => from + i);
  return html`${repeat(list, (i) => i, (i, at) => oneRow(doc, i, blocks.get(Math.floor(i / block))?.rows[i % block], at < filled.value, wide))}`;
}

function inSight(): [number, number] {
  const { doc, count } = listed.value;
  const at = top.value.doc === doc ? Math.min(top.value.at, count - 1) : 0;
  return [Math.max(0, at - spare), Math.min(count, at + Math.ceil(innerHeight / pitch) - 2 + spare + stride)];
}

/** What was asked for last. The next block is asked for when it has come: a fast scroll leaves no queue behind. */
let lastAsked: Args = {};

function blocksOf(doc: string, chosen: Args, from: number, to: number): Map<number, Piles> {
  const found = new Map<number, Piles>();
  let waiting = asked(doc, "piles", lastAsked) === undefined;
  for (let k = Math.floor(from / block); k * block < to; k++) {
    const args = { from: k * block, count: block, ...chosen };
    let piles = asked<Piles>(doc, "piles", args);
    if (piles === null && !waiting) {
      lastAsked = args;
      piles = view<Piles>(doc, "piles", args);
      waiting = piles === undefined;
    }
    if (piles?.ok) found.set(k, piles);
  }
  return found;
}

/** A row whose pile has not come yet is blank, but can be stood on. */
function oneRow(doc: string, i: number, row: PileRow | undefined, full: boolean, wide: boolean): TemplateResult {
  return html`<div class="pile-row" role="row" aria-rowindex=${i + 1} .style=${`top:${i * pitch}px`}>
    <span role="rowheader"><a class="pile-open" data-row=${i} tabindex="0" href=${row ? link("pile", doc, row.id) : nothing}>${row ? row.mark || label("thing.unnamed") : nothing}</a></span>
    <span class="pile-state" role="cell">${row && full ? html`${stateMark(row.state)} <span>${row.stateSays}</span>` : nothing}</span>
    <span class="pile-set" role="cell">${full && row?.state === "open" ? number(doc, row.id, row.set) : nothing}</span>
    ${wide && full && row ? html`<span class="pile-says" role="cell">${minus(row.segments || row.segmentsSay)}</span><span class="pile-says" role="cell">${minus(row.cutSays)}</span>` : nothing}
  </div>`;
}

function scrolled(): void {
  if (!scroller) return;
  const { doc } = listed.peek();
  const at = Math.floor(scroller.scrollTop / pitch / stride) * stride;
  if (top.peek().doc === doc && top.peek().at === at) return;
  const on = rowOf(document.activeElement);
  if (top.peek().doc === doc && Math.abs(at - top.peek().at) > flying) fly();
  top.value = { doc, at };
  const [from, to] = inSight();
  // A row that goes out of the window would take the focus with it.
  if (on !== null && (on < from || on >= to)) scroller.focus({ preventScroll: true });
}

function fly(): void {
  filled.value = 0;
  clearTimeout(resting);
  resting = setTimeout(fill, 80);
}

function fill(): void {
  const [from, to] = inSight();
  filled.value += rowsAFrame;
  if (filled.peek() < to - from) requestAnimationFrame(fill);
  else filled.value = Infinity;
}

function rowOf(element: Element | null): number | null {
  const row = element instanceof HTMLElement && element.closest<HTMLElement>(".pile-row")?.querySelector<HTMLElement>("[data-row]")?.dataset["row"];
  return row ? parseInt(row, 10) : null;
}

function pressed(event: KeyboardEvent): void {
  const { count } = listed.peek();
  if (!scroller || event.altKey || event.ctrlKey || event.metaKey) return;
  const on = rowOf(event.target as Element) ?? Math.ceil(scroller.scrollTop / pitch) - (event.key === "ArrowDown" ? 1 : 0);
  const page = Math.max(1, Math.floor(scroller.clientHeight / pitch) - 1);
  const moves: Record<string, number> = { ArrowDown: on + 1, ArrowUp: on - 1, PageDown: on + page, PageUp: on - page, Home: 0, End: count - 1 };
  const to = moves[event.key];
  if (to === undefined) return;
  event.preventDefault();
  const row = Math.max(0, Math.min(count - 1, to));
  const above = row * pitch;
  const below = above + pitch - scroller.clientHeight;
  if (above < scroller.scrollTop) scroller.scrollTop = above;
  else if (below > scroller.scrollTop) scroller.scrollTop = below;
  scrolled();
  scroller.querySelector<HTMLElement>(`[data-row="${row}"]`)?.focus({ preventScroll: true });
}
