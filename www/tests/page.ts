// Driving the page through its host object, as the screens do.
import type { Page } from "playwright-core";
import type * as files from "../src/files.ts";
import type * as host from "../src/host.ts";
import type * as offline from "../src/offline.ts";
import type * as signals from "../src/signals.ts";

declare global {
  var gaugewright: { host: typeof host; files: typeof files; offline: typeof offline; signals: typeof signals };
}

/** Opens the page and waits until the core runs (or will not run). */
export async function visit(page: Page, url: string): Promise<Page> {
  await page.goto(url);
  await settled(page);
  return page;
}

export async function settled(page: Page): Promise<void> {
  await page.waitForFunction(() => {
    const state = globalThis.gaugewright?.signals.core.value.state;
    return (state === "ready" || state === "unavailable") && globalThis.gaugewright.signals.epoch.value > 0;
  });
}

export function openNew(page: Page, doc: string) {
  return page.evaluate((doc) => gaugewright.host.open(doc, "new"), doc);
}

export function type(page: Page, doc: string, path: string, text: string) {
  return page.evaluate(
    ([doc, path, text]) => gaugewright.host.enter(doc!, { do: "type", path: path!, text: text! }),
    [doc, path, text],
  );
}

/** The values the tally core holds. */
export async function values(page: Page, doc: string): Promise<Record<string, string>> {
  const answer = await page.evaluate((doc) => gaugewright.host.show(doc, "all"), doc);
  if (!answer.ok) throw new Error(`show was refused: ${answer.code}: ${answer.says}`);
  return answer["now"] as Record<string, string>;
}

/** The stored file with pending entries, as text, made without the core. */
export async function rawText(page: Page, doc: string): Promise<string> {
  return page.evaluate(async (doc) => new TextDecoder().decode((await gaugewright.host.rawSave(doc)).bytes), doc);
}

export function coreState(page: Page) {
  return page.evaluate(() => gaugewright.signals.core.value);
}

/** Holds in the end: a busy machine shows states in between. The last failure is the one that counts. */
export async function inTheEnd(holds: () => Promise<void>, within = 3000): Promise<void> {
  for (const end = Date.now() + within; ; await new Promise((done) => setTimeout(done, 50))) {
    try {
      return await holds();
    } catch (failure) {
      if (Date.now() > end) throw failure;
    }
  }
}
