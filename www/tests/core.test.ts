// Cores that fail. Whatever the core does, what was called saved is in the
// job, or set aside with its text; and the page goes on answering.
import assert from "node:assert/strict";
import { check } from "./check.ts";
import type { Page } from "playwright-core";
import { coreState, openNew, rawText, settled, type, values, visit } from "./page.ts";
import { onSite, type SiteName } from "./site.ts";

function withCore(name: SiteName, work: (page: Page) => Promise<void>): Promise<void> {
  return onSite(name, async (context, site) => work(await visit(await context.newPage(), site.url)));
}

function asides(page: Page) {
  return page.evaluate(() => gaugewright.signals.aside.value.map(({ request, why }) => ({ request, why })));
}

check("a core that traps once on its third call is replaced and nothing is missing", () =>
  withCore("trap", async (page) => {
    await openNew(page, "sizing"); // open and save: the third call is the first entry
    for (const [path, text] of [["a", "1"], ["b", "2"], ["c", "3"]] as const) {
      const { answer, savedAt } = await type(page, "sizing", path, text);
      assert.equal(answer.ok, true, `${path}: ${answer.says}`);
      assert.ok(savedAt);
    }
    assert.deepEqual(await values(page, "sizing"), { a: "1", b: "2", c: "3" });
    assert.deepEqual(await asides(page), []);
    assert.deepEqual(await coreState(page), { state: "ready" });
    const lives = await page.workers()[0]?.evaluate(() => "trapped" in globalThis);
    assert.equal(lives, true, "the core did trap");
  }));

check("a core that traps on every third call loses nothing and is told about in words", () =>
  withCore("sick", async (page) => {
    await openNew(page, "sizing");
    const saved: string[] = [];
    for (const text of ["one", "two", "three", "four", "five", "six"]) {
      const { savedAt } = await type(page, "sizing", `path ${text}`, text);
      if (savedAt) saved.push(text);
    }
    assert.ok(saved.length > 0);
    const kept = (await rawText(page, "sizing")) + JSON.stringify(await asides(page));
    for (const text of ["one", "two", "three", "four", "five", "six"]) {
      assert.ok(kept.includes(text), `"${text}" is kept`);
    }
    const answer = await page.evaluate(() => gaugewright.host.show("sizing", "all"));
    if (!answer.ok) assert.match(String(answer.says), /\w+ \w+/);
  }));

for (const manner of ["panic", "fault", "recursion"]) {
  check(`an entry on which the core fails by ${manner} is set aside with its text, the others stay`, () =>
    withCore("plain", async (page) => {
      await openNew(page, "sizing");
      await type(page, "sizing", "before", "1");
      await page.evaluate(() => {
        const lost: string[] = [];
        Object.assign(globalThis, { lost });
        gaugewright.signals.core.subscribe((core) => {
          if (core.state === "replacing") lost.push(core.why);
        });
      });
      const { answer, savedAt } = await type(page, "sizing", "bad", manner);
      const lost = await page.evaluate(() => (globalThis as unknown as { lost: string[] }).lost);
      assert.equal(lost.length, 2, "the entry is tried twice, not more");
      assert.equal(answer.ok, false);
      assert.equal(answer.code, "set-aside");
      assert.equal(savedAt, undefined);
      assert.equal((await type(page, "sizing", "after", "2")).answer.ok, true);
      assert.deepEqual(await values(page, "sizing"), { before: "1", after: "2" });
      const [aside, ...more] = await asides(page);
      assert.equal(more.length, 0);
      assert.equal((JSON.parse(aside!.request) as { text: string }).text, manner);
      assert.ok(aside!.why.length > 5);
      // It is still there, and still aside, after the page was loaded anew.
      await page.reload();
      await settled(page);
      assert.deepEqual(await values(page, "sizing"), { before: "1", after: "2" });
      assert.equal((await asides(page)).length, 1);
    }));
}

check("a question on which the core fails is refused in words and changes nothing", () =>
  withCore("plain", async (page) => {
    await openNew(page, "sizing");
    await type(page, "sizing", "a", "1");
    const answer = await page.evaluate(() => gaugewright.host.show("sizing", "all", { text: "panic" }));
    assert.equal(answer.code, "core-failed");
    assert.deepEqual(await values(page, "sizing"), { a: "1" });
  }));

check("an entry the core never answers is set aside; the page does not wait for ever", () =>
  withCore("plain", async (page) => {
    await openNew(page, "sizing");
    await type(page, "sizing", "before", "1");
    const started = Date.now();
    const { answer } = await type(page, "sizing", "bad", "silence");
    assert.equal(answer.code, "set-aside");
    assert.ok(Date.now() - started < 20000, "two silences of two seconds each, and two restarts");
    assert.deepEqual(await values(page, "sizing"), { before: "1" });
    assert.equal((await asides(page)).length, 1);
  }));

check("a question the core never answers is refused, and those behind it are answered", () =>
  withCore("plain", async (page) => {
    await openNew(page, "sizing");
    const [silent, entered] = await page.evaluate(() =>
      Promise.all([
        gaugewright.host.show("sizing", "all", { text: "silence" }),
        gaugewright.host.enter("sizing", { do: "type", path: "behind", text: "1" }),
      ]),
    );
    assert.equal(silent.code, "core-failed");
    assert.equal(entered.answer.ok, true);
    assert.deepEqual(await values(page, "sizing"), { behind: "1" });
  }));

check("a core that is silent on every third call loses nothing", () =>
  withCore("silent", async (page) => {
    await openNew(page, "sizing");
    await type(page, "sizing", "first", "one");
    await type(page, "sizing", "second", "two");
    const kept = (await rawText(page, "sizing")) + JSON.stringify(await asides(page));
    assert.ok(kept.includes("one") && kept.includes("two"), kept);
  }));

check("a document on which the core fails stays closed but its file can be saved", () =>
  withCore("plain", async (page) => {
    await openNew(page, "sizing");
    await type(page, "sizing", "open", "panic");
    await page.evaluate(() => gaugewright.host.flush());
    await page.reload();
    await settled(page);
    const answer = await page.evaluate(() => gaugewright.host.show("sizing", "all"));
    assert.equal(answer.code, "broken");
    assert.match(await rawText(page, "sizing"), /"open":"panic"/);
    // Another document is not concerned.
    assert.equal((await openNew(page, "shelf")).answer.ok, true);
  }));

check("a core that fails on writing a snapshot leaves everything in the journal", () =>
  withCore("plain", async (page) => {
    await openNew(page, "sizing");
    await type(page, "sizing", "save", "panic");
    await page.evaluate(() => gaugewright.host.flush());
    await type(page, "sizing", "after", "1");
    assert.deepEqual(await values(page, "sizing"), { save: "panic", after: "1" });
    assert.match(await rawText(page, "sizing"), /"pending": \[\n\{.*"text":"panic".*\n\{.*"path":"after"/s);
  }));

check("a core that never gets ready is given up in words; stored jobs can still be saved", () =>
  onSite("plain", async (context, site) => {
    let page = await visit(await context.newPage(), site.url);
    await openNew(page, "sizing");
    await type(page, "sizing", "a", "kept");
    await page.close();
    await site.become("mute");
    page = await context.newPage();
    // The stored program must not hide the new one.
    await page.goto(`${site.url}reset.html`);
    await page.click("#reset");
    await page.getByText("Done.").waitFor();
    await page.goto(site.url);
    await page.waitForFunction(() => globalThis.gaugewright?.signals.core.value.state === "unavailable", null, {
      timeout: 40000,
    });
    assert.match(await rawText(page, "sizing"), /kept/);
    const { answer, savedAt } = await type(page, "sizing", "b", "later");
    assert.equal(answer.code, "core-unavailable");
    assert.ok(savedAt, "an entry is durable even so");
    assert.match(await rawText(page, "sizing"), /"pending": \[\n\{.*"text":"later"/s);
  }),
);
