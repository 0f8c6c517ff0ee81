// An edit that would turn the outcome of piles already pressed, from the typed
// factor over the question to both ways, at phone size. The job is the hand case
// of package window: set reading 15.0 MPa with the factor 2.0, 16.0 with 2.1.
import assert from "node:assert/strict";
import type { Page } from "playwright-core";
import { uuidv7 } from "../src/ids.ts";
import { check } from "./check.ts";
import { Hand } from "./hand.ts";
import { settled, visit } from "./page.ts";
import { at, goTo, onPage, rest, sizes } from "./screens-places.ts";

const [doc, rig, circuit, gauge, type, criterion] = Array.from({ length: 6 }, () => uuidv7()) as [string, string, string, string, string, string];
const piles = Array.from({ length: 4 }, () => uuidv7());
const factor = `/now/criteria/${criterion}/factor`;

/** Three piles pressed to 15.0 MPa and one to come. */
function pressedJob(): string {
  const events = [{ s: 0, is: "set-up", rig, circuit, gauge, ballast: "0 t" }];
  return JSON.stringify({
    format: "gaugewright job", schema: 1, minReader: 1, job: doc,
    now: {
      title: "Pier", decimalSign: ".",
      rigs: { [rig]: { name: "Press", mass: "300 t", ballast: "0 t", circuits: { [circuit]: {
        name: "main", groups: [{ number: "4", bore: "200 mm", side: "bore" }], maxPressure: "25 MPa", onHead: "30 kN", onHeadInMass: "yes",
        efficiency: { low: "0.95", high: "1.00" }, gauge } } } },
      gauges: { [gauge]: { serial: "PG-1", fullScale: "40 MPa", division: "0.5 MPa" } },
      pileTypes: { [type]: { name: "SQ 300", pressingLimit: "2200 kN" } },
      criteria: { [criterion]: { name: "Columns", scheme: "single factor", factor: "2.0" } },
      piles: Object.fromEntries(piles.map((id, i) => [id, { mark: `C${i + 1}`, type, rig, circuit, criterion, workingLoad: "900 kN" }])),
    },
    records: Object.fromEntries(piles.slice(0, 3).map((pile) => [uuidv7(),
      { kind: "drive", pile, parts: { [uuidv7()]: { from: "2026-11-05T08:00:00Z", columns: "s MPa", lines: ["60 9.0", "120 15.0"], events } } }])),
  });
}

async function opened(page: Page, url: string): Promise<void> {
  await visit(page, url);
  await page.evaluate(async ([text, doc]) => gaugewright.host.open(doc, "file", new TextEncoder().encode(text)), [pressedJob(), doc] as const);
}

/** What the job says on the device, apart from the screens. */
function stands(page: Page): Promise<{ now: { criteria: Record<string, { factor: string; name: string }>; piles: Record<string, { criterion: string }> } }> {
  return page.evaluate(async (doc) => JSON.parse(new TextDecoder().decode((await gaugewright.host.save(doc)).bytes)), doc);
}

/** The factor as the core has it; a save would begin a new sitting. */
function factorOf(page: Page): Promise<string> {
  return page.evaluate(async ([doc, path, at]) => {
    const form = (await gaugewright.host.show(doc, "form", { path })) as unknown as { sections: { fields: { path: string; typed: string }[] }[] };
    return form.sections.flatMap((section) => section.fields).find((field) => field.path === at)?.typed ?? "";
  }, [doc, `/now/criteria/${criterion}`, factor] as const);
}

class Engineer extends Hand {
  async types(text: string): Promise<void> {
    await this.tap(`[data-path="${factor}"]`);
    await this.page.keyboard.press("Control+A");
    await this.key(text);
    await rest(this.page);
  }

  async picks(label: string): Promise<void> {
    this.taps++;
    await this.page.getByRole("button", { name: label, exact: true }).first().click();
    await rest(this.page);
  }
}

check("errand: a typed factor is asked about, corrected with a reason, and changed from now on", () =>
  onPage(sizes[0], async (page, site) => {
    await opened(page, site.url);
    await goTo(page, at("form", doc, `/now/criteria/${criterion}`));
    assert.match(await page.locator(".main").innerText(), /3 piles are pressed with this: C1, C2, C3\./);
    const hand = new Engineer(page);
    const band = page.locator(".field", { has: page.locator(`[data-path="${factor}"]`) });
    await hand.types("2.1");
    assert.match(await band.innerText(), /outcome of 3 piles already pressed\. Set reading reached, with this not reached: C1, C2, C3\./);
    assert.equal(await page.locator(`[data-path="${factor}"]`).inputValue(), "2.1", "the text stays in its box");
    assert.equal((await stands(page)).now.criteria[criterion]?.factor, "2.0", "nothing is entered, of no digit either");
    assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= sizes[0].width, "nothing is cut off");
    assert.equal(await page.locator(".band").count(), 0, "said once, at the box");
    if (process.env["SHOTS"]) await page.screenshot({ path: `${process.env["SHOTS"]}/question.png` });

    // What was typed in turn is one record of the journal; the last text is what the ways take.
    await hand.picks("Correct it");
    assert.match(await band.innerText(), /A correction needs a reason\./);
    await hand.tap("#turns-why");
    await hand.key("misread");
    await hand.picks("Correct it");
    assert.equal(await band.locator(".turns").count(), 0);
    assert.equal((await stands(page)).now.criteria[criterion]?.factor, "2.1");
    hand.rests("a correction", 14);
    await band.locator(".to-history").click();
    await page.locator(".entry-of").first().waitFor();
    assert.match(await page.locator(".entry-of").first().innerText(), /misread/);

    // Undone, it is asked about on top, because there is no box; and left.
    await page.locator(".undo").first().click();
    await rest(page);
    assert.match(await page.locator(".band").innerText(), /not reached, with this reached: C1, C2, C3/);
    if (process.env["SHOTS"]) await page.screenshot({ path: `${process.env["SHOTS"]}/undo.png` });
    await hand.picks("Leave it as it was");
    assert.equal(await page.locator(".band").count(), 0);

    await goTo(page, at("form", doc, `/now/criteria/${criterion}`));
    const other = new Engineer(page);
    await other.types("1.9");
    await other.picks("From now on");
    await page.waitForURL((url) => !url.hash.includes(criterion));
    await rest(page);
    assert.match(await page.locator("h1").innerText(), /^Columns \(from \d{4}-\d\d-\d\d\)$/);
    other.rests("from now on", 4);
    const { now } = await stands(page);
    const copy = now.piles[piles[3] ?? ""]?.criterion ?? "";
    assert.deepEqual([now.criteria[criterion]?.factor, now.criteria[copy]?.factor, now.piles[piles[0] ?? ""]?.criterion], ["2.1", "1.9", criterion]);
    assert.equal(await page.locator('[data-path$="/factor"]').inputValue(), "1.9");
  }),
);

check("what was tried on a pressed pile is asked about when it is used", () =>
  onPage(sizes[0], async (page, site) => {
    await opened(page, site.url);
    await goTo(page, at("pile", doc, piles[0] ?? ""));
    await goTo(page, at("size", doc, piles[0] ?? ""));
    const hand = new Engineer(page);
    await hand.tap("#row-load");
    await page.keyboard.press("Control+A");
    await hand.key("950");
    await rest(page);
    await hand.picks("Use this");
    const band = page.locator(".band");
    assert.match(await band.innerText(), /outcome of a pile already pressed\. Set reading reached, with this not reached: C1\./);
    assert.equal(await band.getByRole("button", { name: "From now on" }).count(), 0, "a pile's own value can only be corrected");
    await hand.tap("#turns-why");
    await hand.key("new plan");
    await hand.picks("Correct it");
    await page.waitForURL(/#\/pile\//);
    assert.equal(await band.count(), 0);
    hand.rests("a trial used on a pressed pile", 12);
  }),
);

check("what was asked about is not there after a new start, and what was entered is", () =>
  onPage(sizes[0], async (page, site) => {
    await opened(page, site.url);
    await goTo(page, at("form", doc, `/now/criteria/${criterion}`));
    const hand = new Engineer(page);
    const again = async () => {
      await page.reload();
      await settled(page);
      await page.locator(`[data-path="${factor}"]`).waitFor();
    };
    await hand.types("1.99");
    await page.keyboard.press("Enter");
    await rest(page);
    await hand.types("2.15");
    assert.equal(await factorOf(page), "1.99", "what stood in the box before");
    await again();
    assert.equal(await factorOf(page), "1.99", "all of it is one record of the journal");
    await hand.types("2.15");
    await hand.tap("#turns-why");
    await hand.key("misread");
    await hand.picks("Correct it");
    await hand.types("2.16");
    await again();
    assert.equal(await factorOf(page), "2.16", "a correction is not folded into what is typed after it");
    await page.getByRole("button", { name: "resistance factor", exact: true }).click();
    await rest(page);
    assert.match(await page.locator(".field", { hasText: "resistance factor" }).first().innerText(), /with this not known: C1, C2, C3/);
    assert.equal(await page.locator(".turns").count(), 1, "a choice is asked about where it was made");
  }),
);
