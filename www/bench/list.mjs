// The list of the large job under a finger, and a table of 20,000 rows pasted:
// what the page's main thread does meanwhile, in headless Chromium with the
// processor slowed down four times.
import { existsSync } from "node:fs";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { staticServer } from "../tools/static.mjs";
import { how, milli, row } from "./print.mjs";

const slowdown = 4;
const doc = "0193b000-0000-7000-8000-00000000000a";

/** `large` are the bytes of the job. */
export async function listAndTable(root, large) {
  const server = staticServer(join(root, "www", "build"), (request, response) => {
    if (request.url !== "/large") return false;
    response.end(large);
    return true;
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", done));
  const executablePath = ["/usr/bin/chromium", "/usr/bin/chromium-browser"].find((path) => existsSync(path));
  const browser = await chromium.launch({ executablePath, args: ["--headless", "--no-sandbox", "--disable-gpu"] });
  try {
    const page = await (await browser.newContext({ viewport: { width: 390, height: 664 } })).newPage();
    await page.addInitScript(() => {
      globalThis.longTasks = [];
      new PerformanceObserver((list) => longTasks.push(...list.getEntries().map(({ duration }) => duration))).observe({ type: "longtask" });
    });
    await page.goto(`http://127.0.0.1:${server.address().port}/`);
    await page.evaluate(async (doc) => {
      const bytes = new Uint8Array(await (await fetch("/large")).arrayBuffer());
      await gaugewright.host.open(doc, "file", bytes);
      location.hash = `#/piles/${doc}`;
    }, doc);
    await page.locator(".pile-row .state-mark").first().waitFor();
    const devtools = await page.context().newCDPSession(page);
    await devtools.send("Emulation.setCPUThrottlingRate", { rate: slowdown });
    how("tasks over 50 ms of the main thread, x4, on a busy machine more: wheel and finger, then the whole list in 600 jumps");
    row("large job: list scrolled by hand, x4, long tasks [count, longest ms]", await longWhile(page, () => byHand(page)), "none over 50 ms");
    row("large job: list flown through, x4, long tasks [count, longest ms]", await longWhile(page, () => flownThrough(page)), "none over 50 ms");
    row("20,000 rows pasted and looked at, x4, long tasks [count, longest ms]", await longWhile(page, () => pasted(page)), "none over 50 ms");
    row("  the same taken, until they are listed, x4", await longWhile(page, () => taken(page)), "none over 50 ms");
  } finally {
    await browser.close();
    server.closeAllConnections();
    server.close();
  }
}

async function longWhile(page, work) {
  await page.waitForTimeout(500);
  await page.evaluate(() => (longTasks.length = 0));
  await work();
  await page.waitForTimeout(500);
  const long = await page.evaluate(() => longTasks);
  return `${long.length}, ${milli(Math.max(0, ...long))}`;
}

/** 120 turns of a wheel, two rows each, as fast as a hand does it. */
async function byHand(page) {
  await page.mouse.move(200, 350);
  for (let i = 0; i < 120; i++) {
    await page.mouse.wheel(0, 112);
    await page.waitForTimeout(30);
  }
}

/** The whole list, a jump a frame. */
function flownThrough(page) {
  return page.locator(".pile-rows").evaluate(async (list) => {
    for (let i = 0; i <= 600; i++) {
      list.scrollTop = (list.scrollHeight * i) / 600;
      await new Promise((next) => requestAnimationFrame(next));
    }
  });
}

async function pasted(page) {
  await page.evaluate((doc) => (location.hash = `#/bring/${doc}`), doc);
  await page.locator("#table").evaluate((box) => {
    const lines = Array.from({ length: 20_000 }, (_, i) => `N${i};${500 + (i % 500)},5;-5,20;12,60`);
    const clipboardData = new DataTransfer();
    clipboardData.setData("text/plain", ["Mark;Load [kN];Toe level [m];Platform [m]", ...lines].join("\n"));
    box.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
  });
  await page.locator(".brought > li").first().waitFor();
}

async function taken(page) {
  await page.locator(".main-act").click();
  await page.locator(".pile-count", { hasText: "25000" }).waitFor({ timeout: 120_000 });
}
