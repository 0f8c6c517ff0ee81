// Without a network after the first visit; an update is offered and never
// forced; the reset page drops code and no job.
import assert from "node:assert/strict";
import type { Page } from "playwright-core";
import { check } from "./check.ts";
import { openNew, settled, type, values, visit } from "./page.ts";
import { onSite } from "./site.ts";

function offlineReady(page: Page) {
  return page.waitForFunction(() => gaugewright.signals.offlineReady.value);
}

function version(page: Page): Promise<string | null> {
  return page.evaluate(() => document.querySelector("meta[name=version]")?.getAttribute("content") ?? null);
}

check("after one visit the page works with the server gone", () =>
  onSite("plain", async (context, site) => {
    const first = await visit(await context.newPage(), site.url);
    await openNew(first, "sizing");
    await type(first, "sizing", "a", "1");
    await offlineReady(first);
    // What the browser itself keeps may go at any time.
    await (await context.newCDPSession(first)).send("Network.clearBrowserCache");
    await first.close();
    await site.close();
    for (const path of ["", "index.html", "?from=home"]) {
      const page = await visit(await context.newPage(), site.url + path);
      assert.deepEqual(await page.evaluate(() => gaugewright.signals.core.value), { state: "ready" });
      assert.equal((await type(page, "sizing", "b", path)).answer.ok, true);
      assert.deepEqual(await values(page, "sizing"), { a: "1", b: path });
      assert.equal(typeof (await page.evaluate(() => gaugewright.files.examples())), "object");
      await page.close();
    }
  }),
);

check("an update is offered, waits for the yes, and loses no entry", () =>
  onSite("plain", async (context, site) => {
    const page = await visit(await context.newPage(), site.url);
    await openNew(page, "sizing");
    await type(page, "sizing", "a", "1");
    await offlineReady(page);
    const before = await version(page);
    await site.become("newer");
    assert.equal(await page.evaluate(() => gaugewright.signals.updateOffered.value), false);
    await page.evaluate(() => gaugewright.offline.askForUpdate());
    await page.waitForFunction(() => gaugewright.signals.updateOffered.value);
    // Loading anew is no yes.
    await page.reload();
    await settled(page);
    assert.equal(await version(page), before);
    await page.waitForFunction(() => gaugewright.signals.updateOffered.value);

    await type(page, "sizing", "a", "2");
    await page.evaluate(() => void gaugewright.offline.takeUpdate());
    await page.waitForFunction(
      (before) => document.querySelector("meta[name=version]")?.getAttribute("content") !== before,
      before,
    );
    await settled(page);
    assert.deepEqual(await values(page, "sizing"), { a: "2" });
    const shown = (await (await fetch(`${site.url}version.json`)).json()) as { version: string };
    assert.equal(await version(page), shown.version);
    assert.equal(await page.evaluate(() => gaugewright.signals.updateOffered.value), false);
  }),
);

check("a version that cannot be fetched whole does not take the place of the one that works", () =>
  onSite("plain", async (context, site) => {
    const page = await visit(await context.newPage(), site.url);
    await offlineReady(page);
    await site.become("newer");
    site.before = (request, response) => {
      if (!request.url?.startsWith("/a/examples-") && request.url !== "/") return false;
      response.statusCode = 503;
      response.end();
      return true;
    };
    await page.evaluate(() => gaugewright.offline.askForUpdate());
    // The failed installation must be over before looking.
    await page.waitForFunction(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      return registration?.installing === null && (await caches.keys()).length === 1;
    });
    assert.equal(await page.evaluate(() => gaugewright.signals.updateOffered.value), false);
    await page.reload();
    await settled(page);
  }),
);

check("the reset page drops the program and no job", () =>
  onSite("plain", async (context, site) => {
    const page = await visit(await context.newPage(), site.url);
    await openNew(page, "sizing");
    await type(page, "sizing", "a", "1");
    await offlineReady(page);
    await page.goto(`${site.url}reset.html`);
    await page.click("#reset");
    await page.getByText("Done.").waitFor();
    const left = await page.evaluate(async () => ({
      caches: await caches.keys(),
      workers: (await navigator.serviceWorker.getRegistrations()).length,
    }));
    assert.deepEqual(left, { caches: [], workers: 0 });
    await visit(page, site.url);
    assert.deepEqual(await values(page, "sizing"), { a: "1" });
  }),
);
