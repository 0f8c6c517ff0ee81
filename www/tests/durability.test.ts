// What was called saved is there after the browser was killed. A polite close
// would prove nothing, so the whole process group gets SIGKILL at a random
// moment: while a person types, while copies of the job come in and a person
// types after them, and while the page moves to a newer version.
//
// TRIALS says how many kills in all (`make trials`: 50); every day there are 20.
import assert from "node:assert/strict";
import type { Page } from "playwright-core";
import { uuidv7 } from "../src/ids.ts";
import { check } from "./check.ts";
import { DoomedBrowser, freshProfile } from "./browser.ts";
import { openNew, rawText, settled, values, visit } from "./page.ts";
import { Site, type SiteName } from "./site.ts";

const total = Number(process.env["TRIALS"] ?? "20");
const typing = Math.ceil(total * 0.4);
const joining = Math.ceil((total - typing) / 2);
const updating = total - typing - joining;

/** What each thing must at least hold; the number in it only grows. */
type Promised = Map<string, number>;

interface Trials {
  name: string;
  count: number;
  site: SiteName;
  /** Makes a page ready; returns what it holds, by name. */
  arrive(page: Page, site: Site, trial: number): Promise<(thing: string) => number>;
  /** Starts what goes on until the end; it says "saved <thing> <number>" on the console. */
  work(page: Page, trial: number): Promise<void>;
  /** The longest wait before the kill [ms]. */
  longest: number;
}

function trials({ name, count, site: first, arrive, work, longest }: Trials): void {
  check(
    `${name}: what was called saved survives SIGKILL (${count} trials)`,
    async () => {
      const site = await Site.open(first);
      const profile = freshProfile();
      let browser: DoomedBrowser | null = null;
      try {
        const promised: Promised = new Map();
        const kept = { promises: 0, trialsWithPromises: 0, restored: 0 };
        for (let trial = 0; trial <= count; trial++) {
          browser = await launched(profile.folder);
          const page = await browser.page();
          const holds = await arrive(page, site, trial);
          if (await page.evaluate(() => gaugewright.signals.restored.value)) kept.restored++;
          for (const [thing, least] of promised) {
            assert.ok(holds(thing) >= least, `trial ${trial}: ${thing} holds ${holds(thing)}, saved was ${least}`);
          }
          if (trial === count) break;
          const before = kept.promises;
          page.on("console", (message) => {
            const [word, thing, number] = message.text().split(" ");
            if (word !== "saved" || !thing) return;
            promised.set(thing, Math.max(promised.get(thing) ?? -1, Number(number)));
            kept.promises++;
          });
          await work(page, trial);
          // Every other trial is under way before its time runs, however busy the machine.
          for (let waited = 0; trial % 2 === 0 && kept.promises === before && waited < 15_000; waited += 50) await new Promise((later) => setTimeout(later, 50));
          await new Promise((later) => setTimeout(later, 150 + Math.random() * longest));
          await browser.kill();
          browser = null;
          if (kept.promises > before) kept.trialsWithPromises++;
        }
        console.log(`${name}: ${count} kills, ${kept.promises} entries called saved, in ${kept.trialsWithPromises} of the trials, none lost (${kept.restored} times the browser dropped its database)`);
        assert.ok(kept.promises > count, `only ${kept.promises} entries were called saved in ${count} trials`);
        assert.ok(kept.trialsWithPromises * 2 >= count, `in only ${kept.trialsWithPromises} of ${count} trials anything was called saved before the kill`);
      } finally {
        await browser?.kill();
        profile.drop();
        await site.close();
      }
    },
    60_000 + count * 20_000,
  );
}

/** A busy machine's browser sometimes goes away before it has a page; it is then started once more. */
function launched(profile: string): Promise<DoomedBrowser> {
  return DoomedBrowser.launch(profile).catch(() => DoomedBrowser.launch(profile));
}

/** The number behind the last "-" of a text; -1 where there is none. */
function numberIn(text: string | undefined): number {
  return Number(/(\d+)$/.exec(text ?? "")?.[1] ?? -1);
}

trials({
  name: "typing",
  count: typing,
  site: "plain",
  longest: 1500,
  async arrive(page, site) {
    await visit(page, site.url);
    await openNew(page, "sizing");
    const [found, raw] = [await values(page, "sizing"), await rawText(page, "sizing")];
    return (path) => (raw.includes(`"${path}"`) ? numberIn(found[path]) : -1);
  },
  // Half the entries are key presses on one path, which fold into one record.
  work: (page, trial) =>
    page.evaluate((trial) => {
      void (async () => {
        for (let k = 0; ; k++) {
          const path = k % 8 < 4 ? `trial${trial}/same` : `trial${trial}/${k}`;
          const { savedAt } = await gaugewright.host.enter("sizing", { do: "type", path, text: String(k) });
          if (savedAt !== undefined) console.log(`saved ${path} ${k}`);
        }
      })();
    }, trial),
});

// The other copy states the mark, this one the title: each only grows.
const job = uuidv7();
const other = uuidv7();
let pile = "";

trials({
  name: "joining",
  count: joining,
  site: "build",
  longest: 2500,
  async arrive(page, site, trial) {
    await visit(page, site.url);
    await openNew(page, job);
    if (trial === 0) {
      pile = await page.evaluate(
        async ([job, other]) => {
          const { host } = gaugewright;
          const { bytes } = await host.save(job);
          await host.open(other, "file", bytes);
          await host.keep(other);
          return ((await host.show(job, "piles", { from: 0, count: 1 })) as unknown as { rows: { id: string }[] }).rows[0]?.id ?? "";
        },
        [job, other] as const,
      );
    }
    const file = await page.evaluate(async (job) => new TextDecoder().decode((await gaugewright.host.save(job)).bytes), job);
    const { now } = JSON.parse(file) as { now: { title?: string; piles: Record<string, { mark?: string }> } };
    return (thing) => numberIn(thing === "joined" ? now.piles[pile]?.mark : now.title);
  },
  work: (page, trial) =>
    page.evaluate(
      ([job, other, pile, trial]) => {
        void (async () => {
          const { host } = gaugewright;
          for (let k = trial * 1000; ; k++) {
            const entered = await host.enter(other, { do: "type", path: `/now/piles/${pile}/mark`, typed: `P-${k}` });
            const { bytes } = await host.save(other);
            if (!entered.answer.ok || !bytes) continue;
            const joined = await host.enter(job, { do: "join" }, { bytes });
            if (joined.answer.ok && joined.savedAt !== undefined) console.log(`saved joined ${k}`);
            for (let key = 0; key < 3; key++) {
              const { answer, savedAt } = await host.enter(job, { do: "type", path: "/now/title", typed: `Pier-${k}${key}` });
              if (answer.ok && savedAt !== undefined) console.log(`saved typed ${k}${key}`);
            }
          }
        })();
      },
      [job, other, pile, trial] as const,
    ),
});

/** Versions of the page the updating trials arrived at, in order. */
const arrivedAt: (string | null)[] = [];

trials({
  name: "updating",
  count: updating,
  site: "plain",
  longest: 1200,
  async arrive(page, site, trial) {
    // Every document of this page types as soon as it can, across the change of version.
    await page.addInitScript((trial) => {
      let k = 0;
      const begin = () => {
        if (!globalThis.gaugewright || !("typingAllowed" in sessionStorage)) return setTimeout(begin, 20);
        void (async () => {
          for (;;) {
            const number = Date.now() * 100 + (k++ % 100);
            const { savedAt } = await gaugewright.host.enter("sizing", { do: "type", path: `trial${trial}`, text: String(number) });
            if (savedAt !== undefined) console.log(`saved trial${trial} ${number}`);
          }
        })();
        return 0;
      };
      begin();
    }, trial);
    await visit(page, site.url);
    await openNew(page, "sizing");
    await page.waitForFunction(() => gaugewright.signals.offlineReady.value);
    arrivedAt.push(await page.evaluate(() => document.querySelector("meta[name=version]")?.getAttribute("content") ?? null));
    // Over many trials some kills come before the move to the new version and some after it.
    if (arrivedAt.length > 10) assert.ok(new Set(arrivedAt).size > 1, "no update ever took place");
    const found = await values(page, "sizing");
    // The server moves on; the page has the version it came with.
    await site.become(trial % 2 === 0 ? "newer" : "plain");
    return (path) => numberIn(found[path]);
  },
  async work(page) {
    await page.evaluate(() => gaugewright.offline.askForUpdate());
    await page.waitForFunction(() => gaugewright.signals.updateOffered.value);
    await page.evaluate(() => {
      sessionStorage.setItem("typingAllowed", "yes");
      setTimeout(() => void gaugewright.offline.takeUpdate(), 300 * Math.random());
    });
  },
});

check("the page is whole after the last kill of an update", async () => {
  const site = await Site.open("plain");
  const profile = freshProfile();
  let browser: DoomedBrowser | null = null;
  try {
    browser = await launched(profile.folder);
    const page = await visit(await browser.page(), site.url);
    await openNew(page, "sizing");
    await page.waitForFunction(() => gaugewright.signals.offlineReady.value);
    await site.become("newer");
    await page.evaluate(() => gaugewright.offline.askForUpdate());
    await page.waitForFunction(() => gaugewright.signals.updateOffered.value);
    await page.evaluate(() => void gaugewright.offline.takeUpdate());
    await browser.kill();
    browser = await launched(profile.folder);
    const again = await browser.page();
    await again.goto(site.url);
    await settled(again);
    assert.deepEqual(await again.evaluate(() => gaugewright.signals.core.value), { state: "ready" });
  } finally {
    await browser?.kill();
    profile.drop();
    await site.close();
  }
}, 120_000);
