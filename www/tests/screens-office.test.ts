// The office pastes a schedule and orders the segments; the site surveys a head
// and hands out the cutting list. Taps and keys are counted; the marks and
// figures are invented, the levels are checked by hand.
import assert from "node:assert/strict";
import type { Page } from "playwright-core";
import { check } from "./check.ts";
import { Hand } from "./hand.ts";
import { onPage, sizes } from "./screens-places.ts";

const schedule = [
  "Mark\tType\tRig\tCircuit\tCriterion\tWorking load [kN]\tPlatform [m]\tFounding [m]\tCut-off [m]",
  "D1\tSQ 300\tPress 240\tmain jacks\tShed columns\t800\t12.60\t-5.40\t11.20",
  "D2\tSQ 300\tPress 240\tmain jacks\tShed columns\t800\t12.60\t-6.40\t11.20",
].join("\n");

async function fromScheduleToCuttingList(page: Page): Promise<void> {
  const hand = new Hand(page);
  const text = (selector: string) => page.locator(selector).innerText();
  await hand.tap('header a[href="#/example"]');
  await page.locator(".pile-table").waitFor();
  const ordered = async (mark: string): Promise<string> => {
    await hand.tap('.acts a[href$="/order"]');
    await page.locator(".sheet .line-label", { hasText: mark }).first().waitFor();
    const says = await text(".sheet .main");
    await hand.tap(".back");
    return says;
  };
  const before = await ordered("C8");
  await hand.tap('.acts a[href^="#/bring"]');
  await page.locator("#table").waitFor();
  hand.taps++; // one long press and "paste"
  await page.locator("#table").evaluate((box, pasted) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData("text/plain", pasted);
    box.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
  }, schedule);
  await page.locator(".brought > li").first().waitFor();
  await hand.tap(".main-act");
  await page.locator(".pile-table").waitFor();
  const after = await ordered("D2");
  // D1 needs 18.60 m and D2 19.60 m: what is ordered now is longer by the 40 m that
  // pieces of 8, 6 and 4 m make of them with the fewest joints, or by 38 m.
  const metres = (says: string) => Number(/Total length\s+([\d.]+)/.exec(says)?.[1]);
  assert.ok([38, 40].includes(Math.round(metres(after) - metres(before))), after);
  assert.match(after, /No cheaper order of this stock exists/);
  for (const says of [before, after]) assert.match(says, /(\d+) for the piles, 0 spare/);

  // The head of D1 stands at 13.05: saw at 11.80, 1.25 m below it.
  await hand.tap(".pile-mark a", "D1");
  await hand.tap("#survey-typed");
  await hand.key("13.05");
  await hand.tap(".pile form button");
  await page.getByText("Cut 1.25 m from the head").first().waitFor();
  await hand.tap(".back");
  await hand.tap('.acts a[href$="/cutting"]');
  await page.locator("#release-name").waitFor();
  assert.match(await text(".sheet .main"), /D1\s+1\.25\sm\s+Cut 1\.25 m from the head: saw at level 11\.80 m\. Saw 0\.80 m below platform\. Off-cut to keep: 1\.25 m\. Not released: do not saw\./);
  await hand.tap("#release-name");
  await hand.key("M. Vaar");
  await hand.tap("#release-role");
  await hand.key("site engineer");
  await hand.tap(".sheet form button");
  await page.getByText("Released by M. Vaar, site engineer").first().waitFor();
  assert.equal(await page.locator("#release-name").count(), 0, "nothing is left to release");
  hand.rests("from a schedule to the cutting list", 30);
}

for (const size of [sizes[0], sizes[1], sizes[2]]) {
  check(`errand at ${size.width} x ${size.height}: paste a schedule, order segments, hand out the cutting list`, () =>
    onPage(size, async (page, site) => {
      await page.goto(site.url);
      await fromScheduleToCuttingList(page);
    }),
  );
}
