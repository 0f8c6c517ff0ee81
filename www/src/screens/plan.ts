// The site from above, north up: each pile a shape by its state, or rectangles
// around groups where piles lie too near. The same in words and links below.
import { html, nothing, svg, type TemplateResult } from "lit-html";
import { view } from "./data.ts";
import { frame } from "./frame.ts";
import { label } from "./labels.ts";
import { go, link } from "./route.ts";
import { stateMark } from "./statemark.ts";
import type { Plan } from "./views.ts";

/** A tap opens the nearest pile that is not farther than this [px]. */
const reach = 24;

export function planScreen(doc: string): TemplateResult {
  const plan = view<Plan>(doc, "plan", { width: Math.min(innerWidth, 760) - 32, height: innerHeight - 160 });
  return frame({
    name: "plan",
    over: plan?.ok ? plan.title : "",
    title: label("plan.title"),
    doc,
    body: plan?.ok ? body(doc, plan) : html`<p class="lead">${plan?.says ?? label("core.starting")}</p>`,
  });
}

function body(doc: string, plan: Plan): TemplateResult {
  return html`${plan.piles.length + plan.boxes.length ? drawing(doc, plan) : nothing}
    ${plan.lines.map((line) => html`<p>${line}</p>`)}
    ${plan.states.map(({ state, says }) => html`<p class="pile-state">${stateMark(state)} ${says}</p>`)}
    <h2>${label("plan.groups")}</h2>
    <dl class="facts">
      ${plan.groups.map((group) => html`<div><dt>${group.name}</dt><dd>${group.says}</dd></div>`)}
    </dl>
    <div class="acts">
      ${plan.piles.map((pile) => html`<a class="button" href=${link("pile", doc, pile.id)}>${stateMark(pile.state)} ${pile.mark}</a>`)}
    </div>`;
}

function drawing(doc: string, { width, height, piles, boxes, bar }: Plan): TemplateResult {
  const open = (event: MouseEvent) => {
    const box = (event.currentTarget as Element).getBoundingClientRect();
    const away = (x: number, y: number) => Math.hypot(box.left + x * box.width - event.clientX, box.top + y * box.height - event.clientY);
    const [near] = piles.filter(({ x, y }) => away(x, y) < reach).sort((a, b) => away(a.x, a.y) - away(b.x, b.y));
    if (near) go("pile", doc, near.id);
  };
  return html`<svg class="pile-drawing" viewBox="0 0 ${width} ${height}" role="img" aria-label=${label("plan.title")} @click=${open}>
      ${boxes.map(
        (one) => svg`<rect class="segment" x=${one.x * width} y=${one.y * height} width=${one.wide * width} height=${one.high * height}></rect>`,
      )}
      ${boxes.map((one) => written(one.says, (one.x + one.wide / 2) * width, (one.y + one.high / 2) * height + 6))}
      ${piles.map(
        (one) => svg`<g transform="translate(${one.x * width - 10} ${one.y * height - 10})">${stateMark(one.state)}${one.room ? written(one.mark, 10, 35) : nothing}</g>`,
      )}
    </svg>
    <p class="pile-state">
      ${bar ? html`<svg width=${bar.size * width} height="12"><path d=${`M1 0V11H${bar.size * width - 1}V0`}></path></svg> ${bar.says}` : nothing}
      <svg width="12" height="24" aria-hidden="true"><path d="M6 24V2L1 9M6 2L11 9"></path></svg> ${label("plan.north")}
    </p>`;
}

function written(text: string, x: number, y: number): TemplateResult {
  return svg`<text text-anchor="middle" x=${x} y=${y}>${text}</text>`;
}
