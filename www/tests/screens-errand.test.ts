// The engineer beside the rig, with taps and keys counted: from a cold start
// over the example job to a set reading for a load of his own.
import assert from "node:assert/strict";
import { check } from "./check.ts";
import type { Page } from "playwright-core";
import { settled } from "./page.ts";
import { onPage, sizes } from "./screens-places.ts";

/** Fingers that count. */
class Hand {
  taps = 0;
  keys = 0;

  constructor(readonly page: Page) {}

  async tap(selector: string, text?: string): Promise<void> {
    this.taps++;
    const found = this.page.locator(selector, text === undefined ? {} : { hasText: text }).first();
    await found.click();
  }

  async key(text: string): Promise<void> {
    for (const one of text) {
      this.keys++;
      await this.page.keyboard.press(one);
    }
  }
}

for (const { width, height } of sizes.slice(0, 2)) {
  check(`errand at ${width} x ${height}: example job, then another load on one of its piles`, async () => {
    await onPage({ width, height }, async (page, site) => {
      await page.goto(site.url);
      const hand = new Hand(page);
      await hand.tap('header a[href="#/example"]');
      await hand.tap(".pile-mark a", "C1");
      const before = await page.locator(".set .v").textContent();
      await hand.tap('header a[href^="#/size"]');
      await hand.tap("#row-load");
      await page.locator("#row-load").evaluate((box) => (box as HTMLInputElement).select());
      await hand.key("800");
      await page.waitForFunction((before) => document.querySelector(".set .v")?.textContent !== before, before);
      assert.equal(await page.locator("#row-load").inputValue(), "800");
      assert.equal(await page.locator("#row-load-echo").textContent(), "= 800 kN");
      console.log(`errand at ${width} x ${height}, load changed: ${hand.taps} taps, ${hand.keys} keys`);
      assert.ok(hand.taps <= 8 && hand.keys <= 8, `${hand.taps} taps, ${hand.keys} keys`);
    });
  });

  check(`errand at ${width} x ${height}: example job, then a sizing from nothing with its rig and pile`, async () => {
    await onPage({ width, height }, async (page, site) => {
      await page.goto(site.url);
      await settled(page);
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
      console.log(`errand at ${width} x ${height}, from nothing: ${hand.taps} taps, ${hand.keys} keys`);
      assert.ok(hand.taps <= 8 && hand.keys <= 8, `${hand.taps} taps, ${hand.keys} keys`);
    });
  });
}
