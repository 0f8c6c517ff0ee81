// The engineer beside the rig, with taps and keys counted: from a cold start
// over the example job to a set reading for a load of his own. Both errands are
// done at two phone sizes, in what the keyboard leaves of one, without a
// network, and with the browser killed in the middle.
import assert from "node:assert/strict";
import type { Page } from "playwright-core";
import { DoomedBrowser, freshProfile } from "./browser.ts";
import { check } from "./check.ts";
import { Hand } from "./hand.ts";
import { inTheEnd, settled } from "./page.ts";
import { onPage, sizes } from "./screens-places.ts";
import { Site } from "./site.ts";

const [phone, small] = sizes;
const withKeyboard = { width: 390, height: 330 };

function largeReading(page: Page): Promise<string | null> {
  return page.locator(".set .v").textContent();
}

/** Another load on a pile of the example; both the readings and the box are in sight. */
async function anotherLoad(page: Page): Promise<void> {
  const hand = new Hand(page);
  await hand.tap('header a[href="#/example"]');
  await hand.tap(".pile-mark a", "C1");
  const before = await largeReading(page);
  await hand.tap('header a[href^="#/size"]');
  await hand.tap("#row-load");
  await page.locator("#row-load").evaluate((box) => (box as HTMLInputElement).select());
  await hand.key("800");
  // A slow core may answer to "80" first.
  await page.waitForFunction(
    (before) => document.querySelector("#row-load-echo")?.textContent === "= 800 kN" && document.querySelector(".set .v")?.textContent !== before,
    before,
  );
  assert.equal(await page.locator("#row-load").inputValue(), "800");
  for (const selector of [".set .v", "#row-load"]) {
    await inTheEnd(async () => {
      const box = await page.locator(selector).boundingBox();
      const height = page.viewportSize()?.height ?? 0;
      assert.ok(box && box.y >= 0 && box.y + box.height <= height, `${selector} is in sight`);
    });
  }
  hand.rests("another load");
}

/** A sizing of one's own, with a rig and a pile of the example. */
async function fromNothing(page: Page): Promise<void> {
  const hand = new Hand(page);
  await hand.tap('header a[href="#/example"]');
  await page.locator(".pile-table").waitFor();
  await hand.tap(".back");
  await hand.tap("#row-load");
  await hand.key("900");
  await hand.tap("#row-factor");
  await hand.key("2");
  await hand.tap('a.row[href^="#/pick-rig"]');
  await hand.tap(".thing:has-text('Press 240') .pick");
  await hand.tap('a.row[href^="#/pick-pile"]');
  await hand.tap(".pick", "SQ 300");
  await page.locator(".set .v").waitFor();
  hand.rests("from nothing");
}

/** What hangs in the cabin, and what a reading on the way means. */
async function cabinCard(page: Page): Promise<void> {
  const hand = new Hand(page);
  await hand.tap('header a[href="#/example"]');
  await hand.tap(".pile-mark a", "C1");
  await hand.tap('.acts a[href^="#/card"]');
  await page.locator(".card-table .mark-row").first().waitFor();
  await hand.tap(".back");
  await hand.tap('.acts a[href^="#/convert"]');
  await hand.tap("#convert-reading");
  await hand.key("14.5");
  await page.locator(".conversion .line-value .v").first().waitFor();
  hand.rests("cabin card and a reading");
}

/** Which rig can set a pile that its own cannot, and what it would read there. */
async function whichRig(page: Page): Promise<void> {
  const hand = new Hand(page);
  await hand.tap('header a[href="#/example"]');
  await hand.tap('.acts a[href^="#/fleet"]');
  await hand.tap(".berth.sets");
  await page.locator(".set .v").waitFor();
  assert.match((await page.locator(".head .over").textContent()) ?? "", /not entered/);
  hand.rests("which rig");
}

const errands = { "another load on a pile of the example": anotherLoad, "a sizing from nothing": fromNothing, "the cabin card, and a reading on the way": cabinCard, "which rig can set a pile": whichRig };

for (const [name, errand] of Object.entries(errands)) {
  for (const size of [phone, small, withKeyboard]) {
    check(`errand at ${size.width} x ${size.height}: ${name}`, () =>
      onPage(size, async (page, site) => {
        await page.goto(site.url);
        await errand(page);
      }),
    );
  }

  check(`errand without a network, cold: ${name}`, () =>
    onPage(phone, async (first, site) => {
      await first.goto(site.url);
      await first.waitForFunction(() => globalThis.gaugewright?.signals.offlineReady.value);
      const context = first.context();
      await (await context.newCDPSession(first)).send("Network.clearBrowserCache");
      await first.close();
      await site.close();
      for (const size of [phone, small, withKeyboard]) {
        const page = await context.newPage();
        await page.setViewportSize(size);
        await page.goto(site.url);
        await errand(page);
        // The next one starts from nothing, too.
        await page.evaluate(async () => {
          for (const doc of [...gaugewright.signals.docs.value.keys()]) await gaugewright.host.forget(doc);
        });
        await page.close();
      }
    }),
  );
}

check("errand with the browser killed after it: the sizing is offered, and one tap brings the reading back", async () => {
  const site = await Site.open("build");
  const profile = freshProfile();
  let browser: DoomedBrowser | null = null;
  const started = async (): Promise<Page> => {
    browser = await DoomedBrowser.launch(profile.folder);
    const page = await browser.page();
    await page.setViewportSize(phone);
    await page.goto(site.url);
    return page;
  };
  try {
    const page = await started();
    await fromNothing(page);
    const reading = await largeReading(page);
    await page.waitForFunction(() => /^saved on this device/.test(document.querySelector(".status")?.textContent ?? ""));
    await browser!.kill();
    const again = await started();
    await settled(again);
    assert.equal(await again.locator(".set .v").count(), 0, "no reading before the tap");
    await again.locator(".band.offer button").first().click();
    await again.locator(".set .v").waitFor();
    assert.equal(await largeReading(again), reading);
    assert.equal(await again.locator("#row-load").inputValue(), "900");
  } finally {
    await (browser as DoomedBrowser | null)?.kill();
    profile.drop();
    await site.close();
  }
});
