// axe-core finds nothing on any screen, in both themes. target-size and the
// other rules of WCAG 2.2 are only run when their tag is named.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { check } from "./check.ts";
import type axe from "axe-core";
import { screens } from "../src/screens/list.ts";
import { onPage, entries, goTo, ready } from "./screens-places.ts";
import { www } from "./site.ts";

const tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

check("axe-core finds nothing", async () => {
  const source = readFileSync(join(www, "node_modules", "axe-core", "axe.min.js"), "utf8");
  await onPage({ width: 390, height: 664 }, async (page, site) => {
    const places = await ready(page, site.url);
    await page.evaluate(source);
    const wrong: string[] = [];
    for (const theme of ["light", "dark"]) {
      await page.evaluate((theme) => (document.documentElement.dataset["theme"] = theme), theme);
      for (const screen of screens) {
        for (const place of entries[screen].hash(places)) {
          await goTo(page, place);
          const { passes, violations } = await page.evaluate(async (tags) => {
            const runner = (globalThis as unknown as { axe: typeof axe }).axe;
            const { passes, violations } = await runner.run(document, { runOnly: { type: "tag", values: tags } });
            return { passes: passes.length, violations: violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 120)).join(" | ")}`) };
          }, tags);
          assert.ok(passes > 5, `axe ran on ${place}`);
          wrong.push(...violations.map((v) => `${theme} ${place || "first"}: ${v}`));
        }
      }
    }
    assert.deepEqual(wrong, []);
  });
}, 300_000);
