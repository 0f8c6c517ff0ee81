// Two people, each with a browser and a copy of one job, pass a file to and
// fro; what both have stated is settled by one of them.
import assert from "node:assert/strict";
import type { Page } from "playwright-core";
import { uuidv7 } from "../src/ids.ts";
import { withBrowser } from "./browser.ts";
import { check } from "./check.ts";
import { twoCopies } from "./history-copies.ts";
import { visit } from "./page.ts";
import { at, goTo, onPage, rest } from "./screens-places.ts";
import { Site } from "./site.ts";

/** Hands a job's text over through the screen that takes pasted text. */
async function paste(page: Page, text: string): Promise<void> {
  await goTo(page, "#/paste");
  await page.locator("#pasted").fill(text);
  await page.locator(".main-act").click();
  await page.waitForURL((url) => !url.hash.startsWith("#/paste"));
  await rest(page);
}

async function join(page: Page, text: string): Promise<void> {
  await paste(page, text);
  await page.locator(".join").click();
  await page.waitForURL(/#\/joined\//);
  await rest(page);
}

function fileOf(page: Page, doc: string): Promise<string> {
  return page.evaluate(async (doc) => new TextDecoder().decode((await gaugewright.host.save(doc)).bytes), doc);
}

function typed(page: Page, doc: string, path: string, text: string) {
  return page.evaluate(([doc, path, typed]) => gaugewright.host.enter(doc, { do: "type", path, typed }), [doc, path, text] as const);
}

function stored(text: string, path: string): unknown {
  return path.split("/").slice(1).reduce<unknown>((node, name) => (node as Record<string, unknown>)[name], JSON.parse(text));
}

/** The only document of the device that is no sizing and no shelf. */
function jobOn(page: Page): Promise<string> {
  return page.evaluate(() => [...gaugewright.signals.docs.value.keys()].find((doc) => doc !== "sizing" && doc !== "shelf") ?? "");
}

check("a file goes to and fro, two conflicts are settled, and both copies end with the same bytes", async () => {
  const site = await Site.open("build");
  try {
    await withBrowser((adas) =>
      withBrowser(async (bens) => {
        const ada = await visit(await adas.newPage(), site.url);
        const ben = await visit(await bens.newPage(), site.url);
        await ada.evaluate(() => gaugewright.host.setWho("Ada"));
        await ben.evaluate(() => gaugewright.host.setWho("Ben"));

        const here = uuidv7();
        await ada.evaluate(async (doc) => {
          await gaugewright.host.open(doc, "new");
          await gaugewright.host.enter(doc, { do: "title", title: "North pier" });
          await gaugewright.host.enter(doc, { do: "sign", sign: "," });
        }, here);
        const pile = await ada.evaluate(async (doc) => ((await gaugewright.host.show(doc, "piles", { from: 0, count: 1 })) as unknown as { rows: { id: string }[] }).rows[0]!.id, here);
        const of = (field: string) => `/now/piles/${pile}/${field}`;
        await typed(ada, here, of("workingLoad"), "900");
        await paste(ben, await fileOf(ada, here));
        const there = await jobOn(ben);
        assert.notEqual(there, "");
        assert.equal(await fileOf(ben, there), await fileOf(ada, here), "a file that was only opened is the same file");

        // Edits on both sides: two fields of their own, two that both state.
        await typed(ada, here, of("workingLoad"), "950");
        await typed(ada, here, of("cutoff"), "11,205");
        await typed(ada, here, of("mark"), "P1");
        await typed(ben, there, of("workingLoad"), "800");
        await typed(ben, there, of("cutoff"), "11,345");
        await typed(ben, there, of("platform"), "12,60");

        await join(ada, await fileOf(ben, there));
        assert.deepEqual(await ada.locator(".tally dd").allTextContents(), ["3", "0"], "Ben's three entries came, no line of a record");
        assert.match((await ada.locator(".differences li").allTextContents()).join(" "), /12.60 m/);
        await ada.locator('a.row[href^="#/choices"]').click();
        await ada.locator(".contested").first().waitFor();
        assert.equal(await ada.locator(".contested").count(), 2);
        const loads = ada.locator(".contested", { has: ada.locator(".option", { hasText: "800" }) });
        const words = await loads.locator(".option").allTextContents();
        assert.equal(words.length, 2);
        assert.match(words.find((one) => one.includes("950")) ?? "", /Ada/);
        assert.match(words.find((one) => one.includes("800")) ?? "", /Ben/);
        assert.notEqual(words.find((one) => one.includes("950"))?.match(/device/)?.[0], undefined);

        // One tap takes a value; the other field is still open.
        await loads.locator(".option", { hasText: "800" }).click();
        await rest(ada);
        assert.equal(await ada.locator(".contested").count(), 1);
        assert.equal(stored(await fileOf(ada, here), of("workingLoad")), "800 kN");
        // The value is taken as it stands: with a decimal comma "11.205" typed would be another number.
        await ada.locator(".option", { hasText: /11.205/ }).click();
        await rest(ada);
        assert.equal(await ada.locator(".contested").count(), 0);
        assert.equal(stored(await fileOf(ada, here), of("cutoff")), "11.205 m");

        await join(ben, await fileOf(ada, here));
        assert.equal(await ben.locator('a.row[href^="#/choices"]').count(), 0, "what Ada has settled is settled for Ben");
        assert.equal(await fileOf(ben, there), await fileOf(ada, here), "the same bytes");

        // Once more: what is entered after the union has seen it and stands.
        await typed(ben, there, of("workingLoad"), "820");
        await join(ada, await fileOf(ben, there));
        assert.equal(await ada.locator('a.row[href^="#/choices"]').count(), 0);
        await join(ben, await fileOf(ada, here));
        assert.deepEqual(await ben.locator(".tally dd").allTextContents(), ["0", "0"]);
        const ends = [await fileOf(ada, here), await fileOf(ben, there)];
        assert.equal(ends[0], ends[1], "both copies end with the same bytes");
        assert.equal(stored(ends[0]!, of("workingLoad")), "820 kN");
        assert.equal(stored(ends[0]!, of("platform")), "12.60 m");
        assert.equal(stored(ends[0]!, of("mark")), "P1");

        // The device has it too: a new page shows the same.
        await ada.reload();
        await visit(ada, site.url);
        assert.equal(await fileOf(ada, here), ends[0]);
      }),
    );
  } finally {
    await site.close();
  }
}, 120_000);

check("a name with markup in a choice and in a history is shown as text", async () => {
  await onPage({ width: 390, height: 664 }, async (page, site) => {
    await visit(page, site.url);
    const name = '<img src="x" onerror="globalThis.struck = 1">';
    const { doc, theirs, load } = await twoCopies(page, name);
    await join(page, theirs);
    for (const place of [at("joined", doc), at("choices", doc), at("history", doc, load), at("history", doc, "/now"), at("compare", doc)]) {
      await goTo(page, place);
      assert.equal(await page.locator("main img").count(), 0, place);
    }
    await goTo(page, at("choices", doc));
    assert.ok((await page.locator(".option").allTextContents()).some((text) => text.includes(name)));
    assert.equal(await page.evaluate(() => "struck" in globalThis), false);
  });
});

check("a field with two values says so where it stands and leads to the choice", async () => {
  await onPage({ width: 390, height: 664 }, async (page, site) => {
    await visit(page, site.url);
    const { doc, theirs, pile } = await twoCopies(page);
    await join(page, theirs);
    await goTo(page, at("form", doc, `/now/piles/${pile}`));
    assert.equal(await page.locator(".contested-line").count(), 1, "only the load has two values");
    await page.locator(".contested-line a").click();
    await page.locator(".contested .option").first().waitFor();
    await goTo(page, at("pile", doc, pile));
    await page.locator(".choices-band a").click();
    await page.locator(".contested .option", { hasText: "950" }).click();
    await rest(page);
    assert.equal(await page.locator(".contested").count(), 0);
    await goTo(page, at("form", doc, `/now/piles/${pile}`));
    assert.equal(await page.locator(".contested-line").count(), 0);
    await goTo(page, at("pile", doc, pile));
    assert.equal(await page.locator(".choices-band").count(), 0);
  });
});

check("another job's file is refused in words, and nothing changes", async () => {
  await onPage({ width: 390, height: 664 }, async (page, site) => {
    await visit(page, site.url);
    const one = await twoCopies(page);
    const two = await twoCopies(page);
    const before = await fileOf(page, one.doc);
    const { answer } = await page.evaluate(async ([doc, text]) => gaugewright.host.enter(doc, { do: "join" }, { bytes: new TextEncoder().encode(text) }), [one.doc, two.theirs] as const);
    assert.equal(answer.code, "desk.otherJob");
    assert.equal(await fileOf(page, one.doc), before);
  });
});
