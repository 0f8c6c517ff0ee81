// The plan of the site: shapes where the coordinates say, a scale bar that fits
// them, and piles that open by a tap and from the keyboard.
import assert from "node:assert/strict";
import type { Page } from "playwright-core";
import { check } from "./check.ts";
import { at, goTo, onPage, openExample, sizes } from "./screens-places.ts";
import { visit } from "./page.ts";

const places = [["100 m", "50 m"], ["148 m", "62 m"], ["124 m", "50 m"]] as const;

/** The example with places for its first three piles alone. */
async function placed(page: Page, url: string): Promise<{ job: string; ids: string[] }> {
  await visit(page, url);
  const job = await openExample(page);
  const ids = await page.evaluate(
    async ([job, places]) => {
      const { rows } = (await gaugewright.host.show(job, "piles")) as unknown as { rows: { id: string }[] };
      for (const [i, { id }] of rows.entries()) {
        for (const [k, name] of ["east", "north"].entries()) {
          await gaugewright.host.enter(job, { do: "type", path: `/now/piles/${id}/${name}`, typed: places[i]?.[k] ?? "" });
        }
      }
      return rows.map((row) => row.id);
    },
    [job, places] as const,
  );
  return { job, ids };
}

for (const { width, height } of sizes) {
  check(`the plan at ${width} x ${height}`, async () => {
    await onPage({ width, height }, async (page, site) => {
      const { job, ids } = await placed(page, site.url);
      await goTo(page, at("plan", job));
      await page.locator(".plan .acts a").first().waitFor();
      const middles = await page.locator(".pile-drawing g").evaluateAll((list) =>
        list.map((g) => {
          const { left, top, width, height } = g.querySelector("svg")!.getBoundingClientRect();
          return { x: left + width / 2, y: top + height / 2 };
        }),
      );
      const [a, b, c] = middles;
      assert.ok(a && b && c && middles.length === 3);
      const scale = (b.x - a.x) / 48;
      assert.ok(Math.abs((a.y - b.y) / 12 - scale) < 0.01 * scale, "one scale both ways, north up");
      assert.ok(Math.abs((c.x - a.x) / 24 - scale) < 0.01 * scale);
      const bar = await page.locator(".pile-drawing > path").first().evaluate((path) => path.getBoundingClientRect().width);
      const says = await page.locator(".pile-drawing > text").first().textContent();
      const metres = parseFloat(/^(\d+) m$/.exec(says ?? "")?.[1] ?? "");
      assert.ok(Math.abs(bar - metres * scale) < 2, `the bar of ${says} is ${bar} px long at ${scale} px/m`);

      await page.mouse.click(b.x + 12, b.y + 12);
      await page.waitForURL(`**/${at("pile", job, ids[1]!)}`);
      await page.goBack();
      await page.locator(".plan .acts a").nth(2).focus();
      await page.keyboard.press("Enter");
      await page.waitForURL(`**/${at("pile", job, ids[2]!)}`);
    });
  });
}
