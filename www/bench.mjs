// Measures the page in headless Chromium and prints each figure beside its
// budget. It never fails: budgets in time depend on the machine.
//
// A phone is taken as four times slower than this machine. Work of the page is
// measured with the processor slowed down four times; Chromium does not slow
// down workers, so theirs is measured at full speed.
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { existsSync } from "node:fs";
import { chromium } from "playwright-core";
import { bigJob } from "./bench/bigjob.mjs";
import { slowLine } from "./bench/line.mjs";
import { how, howBusy, measured, mebibytes, median, milli, row, seconds } from "./bench/print.mjs";
import { typeOnScreen } from "./bench/screen.mjs";
import { staticServer } from "./tools/static.mjs";

const www = dirname(fileURLToPath(import.meta.url));
const slow4G = { bitsPerSecond: 1_600_000, roundTrip: 150 };
const slowdown = 4;

const executablePath = ["/usr/bin/chromium", "/usr/bin/chromium-browser"].find((path) => existsSync(path));
const args = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];
/** Requests that reached the server. */
const asked = { count: 0 };

const browser = await chromium.launch({ executablePath, args });

row("what", "measured", "budget");
howBusy();
await measured("first visit on slow 4G", firstVisits);
await measured("repeat visit offline", repeatVisit);
await measured("a job of 200 piles", twoHundredPiles);
await browser.close();

async function served(work) {
  asked.count = 0;
  const server = staticServer(join(www, "build"), () => {
    asked.count++;
    return false;
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", done));
  try {
    await work(server.address().port, server);
  } finally {
    server.closeAllConnections();
    server.close();
  }
}

/** A window of its own; long tasks, paints and the start of the worker are noted from the start. */
async function inWindow(work) {
  const context = await browser.newContext({ viewport: { width: 390, height: 664 } });
  await context.addInitScript(() => {
    globalThis.longTasks = [];
    new PerformanceObserver((list) => {
      for (const { startTime, duration } of list.getEntries()) longTasks.push({ startTime, duration });
    }).observe({ type: "longtask", buffered: true });
    globalThis.paints = [];
    new PerformanceObserver((list) => {
      for (const { startTime } of list.getEntries()) paints.push(startTime);
    }).observe({ type: "largest-contentful-paint", buffered: true });
    globalThis.Worker = class extends Worker {
      constructor(...of) {
        performance.mark("worker started");
        super(...of);
      }
    };
  });
  try {
    await work(context);
  } finally {
    await context.close();
  }
}

async function slowed(page, rate) {
  await (await page.context().newCDPSession(page)).send("Emulation.setCPUThrottlingRate", { rate });
}

function mark(page, name) {
  return page.evaluate((name) => performance.getEntriesByName(name)[0]?.startTime ?? NaN, name);
}

function coreReady(page) {
  const ready = () => globalThis.gaugewright?.signals.core.value.state === "ready";
  return page.waitForFunction(ready, null, { timeout: 60000 });
}

/** Medians of some visits, each in a browser that has never seen the page. */
async function firstVisits() {
  const visits = [];
  for (let k = 0; k < 3; k++) visits.push(await firstVisit());
  const usual = (of) => seconds(median(visits.map((visit) => visit[of])));
  row("largest contentful paint, slow 4G, x4 [s]", usual("painted"), "1.2");
  row("fields usable, slow 4G, x4 [s]", usual("usable"), "1.2");
  row("first answer, first visit, slow 4G, x4 [s]", usual("answered"), "8");
  row("ready to work offline, slow 4G, x4 [s]", usual("offline"), "-");
  row("first visit, bytes over the line [B]", visits[0].bytes.toLocaleString("en"), "1,200,000");
  row("first visit, requests", visits[0].requests, "10");
}

async function firstVisit() {
  let visit;
  await served((port) =>
    inWindow(async (context) => {
      const line = await slowLine(port, slow4G);
      try {
        const page = await context.newPage();
        await slowed(page, slowdown);
        await page.goto(`http://127.0.0.1:${line.port}/`, { timeout: 60000 });
        // The first answer: the quick sizing is open and shown.
        const answered = await page.evaluate(async () => {
          const { host } = globalThis.gaugewright;
          await host.open("sizing", "new");
          await host.show("sizing", "sizing");
          return performance.now();
        });
        await coreReady(page);
        const painted = Math.max(...(await page.evaluate(() => paints)));
        const usable = await mark(page, "fields usable");
        await page.waitForFunction(() => gaugewright.signals.offlineReady.value, null, { timeout: 60000 });
        const offline = await page.evaluate(() => performance.now());
        visit = { painted, usable, answered, offline, bytes: line.bytes, requests: asked.count };
      } finally {
        line.close();
      }
    }),
  );
  return visit;
}

async function repeatVisit() {
  await served((port, server) =>
    inWindow(async (context) => {
      const first = await context.newPage();
      await first.goto(`http://127.0.0.1:${port}/`);
      await first.waitForFunction(() => gaugewright.signals.offlineReady.value, null, { timeout: 60000 });
      await first.close();
      server.closeAllConnections();
      server.close();
      const ready = [];
      const sinceWorker = [];
      for (let k = 0; k < 7; k++) {
        const page = await context.newPage();
        await page.goto(`http://127.0.0.1:${port}/`);
        await coreReady(page);
        ready.push(await mark(page, "core ready"));
        sinceWorker.push((await mark(page, "core ready")) - (await mark(page, "worker started")));
        await page.close();
      }
      how("the page is opened without a network; the core is compiled by the page while its worker starts");
      row("core ready in the worker, repeat visit offline, from the address [s]", seconds(median(ready)), "0.25");
      row("  of this from the start of the worker [s]", seconds(median(sinceWorker)));
    }),
  );
}

async function twoHundredPiles() {
  const { text, firstPile } = bigJob(join(www, "..", "examples"), 200);
  await served((port) =>
    inWindow(async (context) => {
      const page = await context.newPage();
      await page.goto(`http://127.0.0.1:${port}/`);
      await coreReady(page);
      const opened = await page.evaluate((text) => gaugewright.files.openText(text), text);
      if (!opened.answer.ok) throw new Error(`the job is refused: ${opened.answer.says}`);
      const path = `/now/piles/${firstPile}/workingLoad`;
      const keys = (count) =>
        page.evaluate(
          async ([doc, pile, path, count]) => {
            const trips = [];
            for (let k = 0; k < count; k++) {
              const began = performance.now();
              const { answer, savedAt } = await gaugewright.host.enter(
                doc,
                { do: "type", path, typed: String(800 + k) },
                { show: { view: "pile", pile } },
              );
              if (!answer.ok || savedAt === undefined) throw new Error(`an entry is refused: ${answer.says}`);
              trips.push(performance.now() - began);
              // A hand types no faster; the page has time to draw.
              await new Promise((later) => setTimeout(later, 60));
            }
            return trips;
          },
          [opened.doc, firstPile, path, count],
        );
      await keys(5);
      const worker = page.workers()[0];
      await worker.evaluate(() => (figures.calls.length = 0));
      const trips = await keys(40);
      row("key press to new answer, 200 piles, core in the worker, median [ms]", milli(median(await worker.evaluate(() => figures.calls))), "8");
      row("the same with journal and both ways of the message, median [ms]", milli(median(trips)), "-");

      // What a saved entry costs apart from its answer: no view is asked for.
      const saved = await page.evaluate(async ([doc, path]) => {
        const times = [];
        for (let k = 0; k < 60; k++) {
          const began = performance.now();
          await gaugewright.host.enter(doc, { do: "type", path, typed: String(700 + k) });
          times.push(performance.now() - began);
        }
        return times;
      }, [opened.doc, path]);
      row("an entry shown as saved is durable, median [ms]", milli(median(saved)), "10");

      await typeOnScreen(page, opened.doc, firstPile, () => slowed(page, slowdown), slowdown);
      row("linear memory after this, 200 piles [MiB]", mebibytes(await worker.evaluate(() => figures.memory())), "16");
    }),
  );
}
