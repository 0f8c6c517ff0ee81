// Every screen as a phone in the sun needs it: no sideways scroll, text at
// least 7:1, targets of 48 px with 8 px between, numbers needed at the rig at
// least 26 px. A screen without an entry in screens-places.ts fails.
//
// Contrast as in WCAG 2.2, "contrast ratio" and "relative luminance"; 7:1 is
// its success criterion 1.4.6. Target and number sizes are the product's own.
import assert from "node:assert/strict";
import { check } from "./check.ts";
import type { Page } from "playwright-core";
import { screens } from "../src/screens/list.ts";
import { twoCopies } from "./history-copies.ts";
import { at, entries, goTo, onPage, ready, rest, rigNumbers, sizes, type Places } from "./screens-places.ts";

const least = { contrast: 7, target: 48, gap: 8, number: 26 };

/** Runs in the page: everything that is wrong there, and how many numbers were measured. */
function faults([rigNumbers, least]: [string, { contrast: number; target: number; gap: number; number: number }]) {
  const wrong: string[] = [];
  const name = (e: Element) => `${e.tagName.toLowerCase()}.${e.getAttribute("class") ?? ""} "${(e.textContent ?? "").trim().slice(0, 30)}"`;
  const seen = (e: Element) => {
    const box = e.getBoundingClientRect();
    if (box.width <= 1 || box.height <= 1) return false;
    return e.checkVisibility({ visibilityProperty: true, opacityProperty: true });
  };
  const sideways = document.documentElement.scrollWidth - innerWidth;
  if (sideways > 0) wrong.push(`scrolls sideways by ${sideways} px`);

  const channels = (colour: string) => (colour.match(/[\d.]+/g) ?? []).map(Number);
  const luminance = (colour: string) => {
    const [r = 0, g = 0, b = 0] = channels(colour).map((c) => (c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const ground = (e: Element | null): string => {
    for (; e; e = e.parentElement) {
      const colour = getComputedStyle(e).backgroundColor;
      const alpha = channels(colour)[3];
      if (alpha === undefined || alpha === 1) return colour;
    }
    return "rgb(255, 255, 255)";
  };
  let texts = 0;
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walk.nextNode(); node; node = walk.nextNode()) {
    const e = node.parentElement;
    if (!e || !(node.textContent ?? "").trim() || !seen(e) || e.closest("option")) continue;
    const style = getComputedStyle(e);
    const ink = e instanceof SVGElement ? style.fill : style.color;
    const [one, two] = [luminance(ink), luminance(ground(e))];
    const ratio = (Math.max(one, two) + 0.05) / (Math.min(one, two) + 0.05);
    if (ratio < least.contrast) wrong.push(`contrast ${ratio.toFixed(2)}: ${name(e)}`);
    texts++;
  }

  // What a scroller hides of its rows cannot be touched.
  const shown = (e: Element) => {
    const { left, right, top, bottom } = e.getBoundingClientRect();
    const port = e.closest(".pile-rows")?.getBoundingClientRect();
    return port ? { left, right, top: Math.max(top, port.top), bottom: Math.min(bottom, port.bottom) } : { left, right, top, bottom };
  };
  const targets = [...document.querySelectorAll("a[href], button, input, select, textarea, summary")].filter((e) => seen(e) && shown(e).bottom > shown(e).top);
  const boxes = targets.map(shown);
  boxes.forEach((box, i) => {
    const whole = targets[i]!.getBoundingClientRect();
    if (whole.width < least.target - 0.01 || whole.height < least.target - 0.01) {
      wrong.push(`target ${whole.width.toFixed(1)} x ${whole.height.toFixed(1)}: ${name(targets[i]!)}`);
    }
    for (let j = i + 1; j < boxes.length; j++) {
      const other = boxes[j]!;
      const across = Math.max(box.left - other.right, other.left - box.right);
      const down = Math.max(box.top - other.bottom, other.top - box.bottom);
      if (Math.max(across, down) < least.gap - 0.01) wrong.push(`only ${Math.max(across, down).toFixed(1)} px between ${name(targets[i]!)} and ${name(targets[j]!)}`);
    }
  });
  for (const e of document.querySelectorAll("input, select, textarea")) {
    if (parseFloat(getComputedStyle(e).fontSize) < 18) wrong.push(`small input: ${name(e)}`);
  }

  const numbers = [...document.querySelectorAll(rigNumbers)].filter(seen);
  for (const e of numbers) {
    const size = parseFloat(getComputedStyle(e).fontSize);
    if (size < least.number) wrong.push(`number of ${size} px: ${name(e)}`);
  }
  return { wrong, numbers: numbers.length, texts };
}

async function examine(page: Page, where: string, numbers: number): Promise<string[]> {
  const found = await page.evaluate(faults, [rigNumbers, least] as [string, typeof least]);
  const wrong = found.wrong.map((fault) => `${where}: ${fault}`);
  if (found.texts === 0) wrong.push(`${where}: shows no text`);
  if (found.numbers < numbers) wrong.push(`${where}: shows ${found.numbers} numbers needed at the rig, not ${numbers}`);
  return wrong;
}

/** States of screens that no address leads to. */
const states: Record<string, (page: Page, places: Places) => Promise<void>> = {
  "the question about a comma": async (page) => {
    await goTo(page, "#/");
    await page.locator("#row-load").fill("1,200");
    await page.locator(".offers button").first().waitFor();
  },
  "a closed window": async (page) => {
    await page.locator("#row-load").fill("5000");
    await page.locator(".lines.ways").waitFor();
  },
  "a limit missing": async (page, places) => {
    await goTo(page, at("form", "sizing", `/now/pileTypes/${places.type}`));
    await page.locator('[data-path$="/pressingLimit"]').fill("");
    await rest(page);
    await goTo(page, at("limits", "sizing"));
    await page.locator(".limit.missing").waitFor();
  },
  "a waiver being filled in": async (page, places) => {
    await goTo(page, at("form", "sizing", `/now/pileTypes/${places.type}`));
    await page.locator("details.waiver summary").click();
  },
  "a thing being struck out": async (page, places) => {
    await goTo(page, at("form", places.job, `/now/piles/${places.pile}`));
    await page.locator("details.strike-out summary").click();
  },
  "a file that is complained about": async (page) => {
    await goTo(page, "#/paste");
    await page.locator("#pasted").fill("{");
    await page.locator(".main-act").click();
    await page.locator(".complaints li").first().waitFor();
  },
  "a job that is here already": async (page) => {
    await goTo(page, "#/example");
    await page.locator(".main .band").waitFor();
  },
  "two copies put together": async (page) => {
    const { theirs } = await twoCopies(page);
    await goTo(page, "#/paste");
    await page.locator("#pasted").fill(theirs);
    await page.locator(".main-act").click();
    await page.locator(".join").click();
    await page.locator(".tally").waitFor();
  },
  "readings that wait for a choice": async (page, places) => {
    await goTo(page, at("piles", places.joined));
    await page.locator(".pile-mark a").first().click();
    await page.locator(".choices-band").waitFor();
  },
  "a row with two values": async (page) => {
    await page.locator('header a[href^="#/size"]').click();
    await page.locator(".contested-line").waitFor();
  },
  "a form with two values": async (page, places) => {
    await goTo(page, at("form", places.joined, places.stated.replace(/\/[^/]+$/, "")));
    await page.locator(".contested-line").first().waitFor();
  },
  "a table that is asked about": async (page, places) => {
    await goTo(page, at("bring", places.job));
    await page.locator("#table").fill("Mark;Load;Platform [m];Note\nC1;900;12,60;\nC2;950;13,20;\nD1;nine;12,60;next to the wall\n1-Mar;400;12,60;\n");
    await page.locator(".main-act").click();
    await page.locator(".table-question").waitFor();
  },
  "a table as it was understood": async (page) => {
    await page.locator(".table-question button").first().click();
    await page.locator(".brought > li").first().waitFor();
  },
  "the columns of a table": async (page) => {
    await page.locator('a[href^="#/bring-columns"]').click();
    await page.locator(".table-column").first().waitFor();
  },
  "a list of very many piles": async (page, places) => {
    await goTo(page, at("bring", places.joined));
    await page.locator("#table").fill(["Mark", ...Array.from({ length: 60 }, (_, i) => `A-${1000 + i}`)].join("\n"));
    await page.locator(".main-act").click();
    await page.locator(".main-act", { hasText: "60" }).click();
    await page.locator(".pile-row .state-mark").first().waitFor();
    await page.locator(".list-acts summary").click();
  },
  "a plan of piles that stand too near": async (page, places) => {
    await goTo(page, at("bring", places.joined));
    await page.locator("#table").fill("Mark;East [m];North [m]\nN1;0;0\nN2;500;0\nN3;501;0\n");
    await page.locator(".main-act").click();
    await page.locator(".main-act", { hasText: "3" }).click();
    await page.locator(".pile-row .state-mark").first().waitFor();
    await goTo(page, at("plan", places.joined));
    await page.locator(".plan rect").first().waitFor();
  },
  "the question before removing a job": async (page, places) => {
    await goTo(page, at("job", places.job));
    await page.locator(".main section").last().locator("button").click();
    await page.locator(".main .band").waitFor();
  },
  "a criterion by risk ratings and their weights": (page) => criterionBy(page, "strength reduction", []),
  "a criterion by static tests, with its parts": (page) => criterionBy(page, "static tests", ["test", "combination", "layer"]),
  "the offer of the last sizing": async (page) => {
    await goTo(page, "#/");
    await page.reload();
    await page.locator(".offer").waitFor();
  },
};

/** The criterion of the sizing by another scheme, with parts added. */
async function criterionBy(page: Page, scheme: string, parts: string[]): Promise<void> {
  const path = await page.evaluate(
    async ([scheme, parts]) => {
      const { host } = gaugewright;
      const { criterion } = (await host.show("sizing", "sizing")) as unknown as { criterion: string };
      const path = `/now/criteria/${criterion}`;
      await host.enter("sizing", { do: "choose", path: `${path}/scheme`, value: scheme });
      await host.enter("sizing", { do: "choose", path: `${path}/pileKind`, value: "pressed" });
      for (const what of parts) await host.enter("sizing", { do: "add", what, path }, { ids: 1 });
      return path;
    },
    [scheme, parts] as const,
  );
  await goTo(page, at("form", "sizing", path));
  await page.locator(".ground").waitFor();
}

check("every screen has an entry", async () => {
  assert.deepEqual(Object.keys(entries).sort(), [...screens].sort());
});

for (const { width, height } of sizes) {
  check(`styles at ${width} x ${height}`, async () => {
    await onPage({ width, height }, async (page, site) => {
      const places = await ready(page, site.url);
      const wrong: string[] = [];
      for (const theme of ["light", "dark"]) {
        await page.evaluate((theme) => (document.documentElement.dataset["theme"] = theme), theme);
        for (const screen of screens) {
          const { hash, numbers } = entries[screen];
          for (const place of hash(places)) {
            await goTo(page, place);
            wrong.push(...(await examine(page, `${theme} ${place || "first"}`, numbers)));
          }
        }
      }
      for (const [name, reach] of Object.entries(states)) {
        await reach(page, places);
        await rest(page);
        wrong.push(...(await examine(page, name, 0)));
      }
      assert.deepEqual(wrong, []);
    });
  }, 300_000);
}

check("the large number is 72 px or more on a phone", async () => {
  await onPage({ width: 360, height: 640 }, async (page, site) => {
    await ready(page, site.url);
    const size = await page.locator(".set .v").evaluate((e) => parseFloat(getComputedStyle(e).fontSize));
    assert.ok(size >= 72 && size <= 96, `${size} px`);
  });
});
