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
  const plan = view<Plan>(doc, "plan", { width: Math.min(innerWidth, 1120) - 32, height: innerHeight - 200 });
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
    <section>
      ${plan.lines.map((line) => html`<p>${line}</p>`)}
      ${plan.states.map(({ state, says }) => html`<p class="pile-state">${stateMark(state)} ${says}</p>`)}
    </section>
    ${plan.groups.length
      ? html`<section>
          <h2>${label("plan.groups")}</h2>
          <dl class="facts">
            ${plan.groups.map((group) => html`<div><dt>${group.name}</dt><dd>${group.says}</dd></div>`)}
          </dl>
        </section>`
      : nothing}
    <div class="acts">
      ${plan.piles.map((pile) => html`<a class="button pile-state" href=${link("pile", doc, pile.id)}>${stateMark(pile.state)} ${pile.mark}</a>`)}
    </div>`;
}

/** Below the plan stand the scale bar, drawn with it so that both grow alike, and the mark for north. */
function drawing(doc: string, { width, height, piles, boxes, bar }: Plan): TemplateResult {
  const whole = height + 40;
  const open = (event: MouseEvent) => {
    const box = (event.currentTarget as Element).getBoundingClientRect();
    const scale = box.width / width;
    const away = (x: number, y: number) => Math.hypot(box.left + x * width * scale - event.clientX, box.top + y * height * scale - event.clientY);
    const [near] = piles.filter(({ x, y }) => away(x, y) < reach).sort((a, b) => away(a.x, a.y) - away(b.x, b.y));
    if (near) go("pile", doc, near.id);
  };
  return html`<svg class="pile-drawing" viewBox="0 0 ${width} ${whole}" role="img" aria-label=${label("plan.title")} @click=${open}>
    ${boxes.map((one) => svg`<rect x=${one.x * width} y=${one.y * height} width=${one.wide * width} height=${one.high * height}></rect>`)}
    ${boxes.map((one) => written(one.says, one.at * width, one.down * height))}
    ${piles.map(
      (one) => svg`<g transform="translate(${one.x * width - 10} ${one.y * height - 10})">${stateMark(one.state)}${one.room ? written(one.mark, 10, 29) : nothing}</g>`,
    )}
    ${bar ? svg`<path d=${`M1 ${height + 2}v8H${bar.size * width + 1}v-8`}></path>${written(bar.says, (bar.size * width) / 2, height + 24)}` : nothing}
    <path d=${`M${width - 12} ${whole}v-30l-6 9m6-9l6 9`}></path>${written(label("plan.north"), width - 32, height + 20)}
  </svg>`;
}

/** A text with its middle at x, y. */
function written(text: string, x: number, y: number): TemplateResult {
  return svg`<text text-anchor="middle" x=${x} y=${y + 6}>${text}</text>`;
}
