// What was stated before, where it stands; taking back; what changed; and what
// the page says about storage that may go or is full.
import assert from "node:assert/strict";
import { check } from "./check.ts";
import { twoCopies } from "./history-copies.ts";
import { settled, visit } from "./page.ts";
import { at, goTo, onPage, rest, typeInto } from "./screens-places.ts";

check("a value's history opens from its form and its working; an entry is taken back and brought again", async () => {
  await onPage({ width: 390, height: 664 }, async (page, site) => {
    await visit(page, site.url);
    const { doc, pile, load } = await twoCopies(page);
    await goTo(page, at("form", doc, `/now/piles/${pile}`));
    const field = page.locator(".field", { has: page.locator(`[data-path="${load}"]`) });
    assert.equal(await field.locator(".box").inputValue(), "950");
    await field.locator(".to-history").click();
    await page.locator(".entry-of").first().waitFor();
    const says = () => page.locator(".entry-says").allTextContents();
    assert.deepEqual((await says()).map((text) => text.replace(/\s/g, " ")), ["950 kN", "900 kN"], "the latest first");
    assert.match((await page.locator(".entry-by").first().textContent()) ?? "", /Ada/);
    assert.equal(await page.locator(".undo").count(), 1, "only the latest entry of a value can be taken back");
    await page.locator(".undo").click();
    await rest(page);
    assert.equal((await says()).length, 3, "taking back is an entry of its own");
    assert.match((await says())[0] ?? "", /900/);

    await goTo(page, at("working", doc, load));
    await page.locator('.acts a[href^="#/history"]').waitFor();
    await page.locator(".acts .undo").click();
    await rest(page);
    await goTo(page, at("form", doc, `/now/piles/${pile}`));
    assert.equal(await field.locator(".box").inputValue(), "950", "the taking back was taken back");
  });
});

check("the last entry of a job is shown before it is taken back", async () => {
  await onPage({ width: 390, height: 664 }, async (page, site) => {
    await visit(page, site.url);
    const { doc, pile } = await twoCopies(page);
    await goTo(page, at("job", doc));
    await page.locator('a.row[href^="#/history"]').click();
    await page.locator(".entry-of").first().waitFor();
    assert.match((await page.locator(".entry-of").first().textContent()) ?? "", /11.20/);
    assert.equal(await page.locator(".entry-of").last().locator(".undo").count(), 0, "what the job began with cannot be taken back");
    await page.locator(".entry-of .undo").first().click();
    await rest(page);
    const file = await page.evaluate(async (doc) => new TextDecoder().decode((await gaugewright.host.save(doc)).bytes), doc);
    assert.equal((JSON.parse(file) as { now: { piles: Record<string, { cutoff: string }> } }).now.piles[pile]?.cutoff, "");
  });
});

check("two states are compared at times of sittings", async () => {
  await onPage({ width: 390, height: 664 }, async (page, site) => {
    await visit(page, site.url);
    const { doc } = await twoCopies(page);
    await goTo(page, at("job", doc));
    await page.locator('a.row[href^="#/compare"]').click();
    await page.locator(".differences li").first().waitFor();
    const shown = (await page.locator(".differences li").allTextContents()).join(" | ");
    assert.match(shown, /900.*950/s, "since the last sitting began");
    assert.match(shown, /11.20/);
    assert.doesNotMatch(shown, /North pier/);
    // From before the first sitting the title is a difference too.
    const first = await page.locator("#compare-from option").last().getAttribute("value");
    await page.locator("#compare-from").selectOption(first);
    await rest(page);
    assert.match((await page.locator(".differences li").allTextContents()).join(" | "), /North pier/);
    // Up to the end of the first sitting the load was 900.
    const end = await page.locator("#compare-to option").last().getAttribute("value");
    await page.locator("#compare-to").selectOption(end);
    await rest(page);
    const early = (await page.locator(".differences li").allTextContents()).join(" | ");
    assert.match(early, /900/);
    assert.doesNotMatch(early, /950/);
    await page.goBack();
    await page.waitForURL(/#\/job\//);
  });
});

check("the list of jobs says what the browser may do with them", async () => {
  await onPage({ width: 390, height: 664 }, async (page, site) => {
    await visit(page, site.url);
    await goTo(page, "#/jobs");
    const words = async () => (await page.locator(".evict").textContent()) ?? "";
    const may = await words();
    assert.match(may, /[Oo]nly a file is safe/);
    await page.evaluate(() => (gaugewright.signals.persisted.value = true));
    assert.notEqual(await words(), may, "a promise of the browser changes the sentence");
    assert.match(await words(), /[Oo]nly a file is safe/);
  });
});

check("a full device is told in the status line, and nothing is called saved", async () => {
  await onPage({ width: 390, height: 664 }, async (page, site) => {
    await visit(page, site.url);
    await page.locator("#row-load").waitFor();
    await typeInto(page, "#row-load", "9");
    const status = page.locator(".status");
    await page.waitForFunction(() => /^saved on this device/.test(document.querySelector(".status")?.textContent ?? ""));
    await page.workers()[0]!.evaluate(() => {
      const healthy = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function () {
        throw new DOMException("no space is left for this site", "QuotaExceededError");
      };
      Object.assign(globalThis, { heal: () => (IDBObjectStore.prototype.put = healthy) });
    });
    await page.locator("#row-load").press("End");
    await page.keyboard.type("00");
    await page.waitForFunction(() => /^not saved/.test(document.querySelector(".status")?.textContent ?? ""));
    assert.match((await status.textContent()) ?? "", /only in memory.*no space is left/);
    assert.doesNotMatch((await status.textContent()) ?? "", /saved on this device/);
    const { answer, savedAt } = await page.evaluate(() => gaugewright.host.enter("sizing", { do: "title", title: "North pier" }));
    assert.equal(answer.ok, true, "the entry counts");
    assert.equal(savedAt, undefined, "but is not called saved");
    // A copy that comes in is not called saved either.
    const file = await page.evaluate(async () => (await gaugewright.host.save("sizing")).bytes);
    assert.ok(file && new TextDecoder().decode(file).includes("900 kN"), "a file can leave even so");
    const joined = await page.evaluate(async () => {
      const { bytes } = await gaugewright.host.save("sizing");
      return gaugewright.host.enter("sizing", { do: "join" }, { bytes: bytes! });
    });
    assert.equal(joined.answer.ok, true);
    assert.equal(joined.savedAt, undefined);
    // With space again everything that waited is written.
    await page.workers()[0]!.evaluate(() => (globalThis as unknown as { heal(): void }).heal());
    await typeInto(page, "#row-factor", "2");
    await page.waitForFunction(() => /^saved on this device/.test(document.querySelector(".status")?.textContent ?? ""));
    await page.reload();
    await settled(page);
    const after = await page.evaluate(async () => new TextDecoder().decode((await gaugewright.host.save("sizing")).bytes));
    assert.match(after, /900 kN/);
    assert.match(after, /North pier/);
  });
});
