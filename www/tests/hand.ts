// Counting what a person does.
import assert from "node:assert/strict";
import type { Page } from "playwright-core";

/** Fingers that count. */
export class Hand {
  taps = 0;
  keys = 0;

  constructor(readonly page: Page) {}

  async tap(selector: string, text?: string): Promise<void> {
    this.taps++;
    await this.page.locator(selector, text === undefined ? {} : { hasText: text }).first().click();
  }

  async key(text: string): Promise<void> {
    for (const one of text) {
      this.keys++;
      await this.page.keyboard.press(one);
    }
  }

  /** Prints what the errand took; more than so many taps or keys fail. */
  rests(errand: string, most = 8): void {
    const { width, height } = this.page.viewportSize() ?? { width: 0, height: 0 };
    console.log(`${errand} at ${width} x ${height}: ${this.taps} taps, ${this.keys} keys`);
    assert.ok(this.taps <= most && this.keys <= most, `${errand}: ${this.taps} taps, ${this.keys} keys`);
  }
}
