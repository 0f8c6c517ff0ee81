// On paper (A4, black and white) only what belongs there is left, and nothing
// runs over the edge. 794 px are 210 mm at 96 px an inch.
import assert from "node:assert/strict";
import { check } from "./check.ts";
import { onPage, at, goTo, ready } from "./screens-places.ts";

check("pile, list and working print clean", async () => {
  await onPage({ width: 794, height: 1123 }, async (page, site) => {
    const places = await ready(page, site.url);
    await page.evaluate(() => (document.documentElement.dataset["theme"] = "dark"));
    await page.emulateMedia({ media: "print" });
    for (const place of [at("piles", places.job), at("pile", places.job, places.pile), at("working", places.job, places.step, places.pile), at("card", places.job, places.pile), at("fleet", places.job)]) {
      await goTo(page, place);
      const found = await page.evaluate(() => {
        const shown = (selector: string) => [...document.querySelectorAll(selector)].filter((e) => e.checkVisibility()).length;
        const style = getComputedStyle(document.documentElement);
        return {
          buttons: shown("button, a.button, .status"),
          over: document.documentElement.scrollWidth - innerWidth,
          colours: [style.color, style.backgroundColor],
          head: document.querySelector("#title")?.textContent,
        };
      });
      assert.equal(found.buttons, 0, place);
      assert.ok(found.over <= 0, `${place}: ${found.over} px over the edge`);
      assert.deepEqual(found.colours, ["rgb(0, 0, 0)", "rgb(255, 255, 255)"]);
      assert.ok(found.head);
      const paper = await page.pdf({ preferCSSPageSize: true });
      assert.equal(paper.subarray(0, 5).toString(), "%PDF-");
      const box = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(paper.toString("latin1"));
      // A4 is 210 mm x 297 mm (ISO 216), in points of 1/72 inch.
      assert.ok(box && Math.abs(Number(box[1]) - (210 / 25.4) * 72) < 1.5 && Math.abs(Number(box[2]) - (297 / 25.4) * 72) < 1.5, box?.[0] ?? "no page box");
    }
    await goTo(page, at("card", places.job, places.pile));
    const card = await page.pdf({ preferCSSPageSize: true });
    assert.equal(card.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length, 1, "a cabin card is one page");
    assert.match(card.toString("latin1"), /\/Type\s*\/Font\b/, "its text is text");
    assert.doesNotMatch(card.toString("latin1"), /\/Subtype\s*\/Image\b/, "and no picture of it");
    await goTo(page, at("piles", places.job));
    assert.equal(await page.locator(".pile-table thead").evaluate((e) => getComputedStyle(e).display), "table-header-group");
  });
});
