// The product itself: what a first visit costs in requests, and that the real
// core answers.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { check } from "./check.ts";
import { coreState, openNew, rawText, visit } from "./page.ts";
import { onSite, www } from "./site.ts";

check("a first visit asks for no more than its budget, the service worker included", () =>
  onSite("build", async (context, site) => {
    const budgets = JSON.parse(readFileSync(join(www, "budgets.json"), "utf8")) as Record<string, number>;
    const budget = budgets["first visit, requests"];
    assert.ok(budget);
    const page = await visit(await context.newPage(), site.url);
    await page.waitForFunction(() => gaugewright.signals.offlineReady.value);
    // Headless Chromium leaves the manifest to the service worker.
    assert.ok(site.asked.length > 5 && site.asked.length <= budget, site.asked.join("\n"));
  }),
);

check("the real core opens a document, takes an entry, and keeps it over a reload", () =>
  onSite("build", async (context, site) => {
    const page = await visit(await context.newPage(), site.url);
    assert.deepEqual(await coreState(page), { state: "ready" });
    assert.equal((await openNew(page, "a job")).answer.ok, true);
    const { answer, savedAt } = await page.evaluate(() =>
      gaugewright.host.enter("a job", { do: "title", title: "Quay wall, trial" }),
    );
    assert.equal(answer.ok, true, answer.says);
    assert.ok(savedAt);
    await page.evaluate(() => gaugewright.host.flush());
    assert.equal(await page.evaluate(() => gaugewright.signals.docs.value.get("a job")?.title), "Quay wall, trial");
    await visit(page, site.url);
    assert.match(await rawText(page, "a job"), /Quay wall, trial/);
    const { answer: opened } = await page.evaluate(() => gaugewright.host.open("a job", "stored"));
    assert.equal(opened.ok, true);
    assert.equal(opened["title"], "Quay wall, trial");
  }),
);

check("the product says in words that WebAssembly is missing", () =>
  onSite("build", async (context, site) => {
    site.patchWorker("delete globalThis.WebAssembly;");
    await context.addInitScript(() => {
      delete (globalThis as { WebAssembly?: unknown }).WebAssembly;
    });
    const page = await visit(await context.newPage(), site.url);
    assert.equal((await coreState(page)).state, "unavailable");
    await page.getByText("WebAssembly").first().waitFor();
  }),
);
