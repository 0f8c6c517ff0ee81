// Jobs in as files, drops and text; out as files. A job counts as being in a
// file only after the file has left.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { check } from "./check.ts";
import { openNew, type, values, visit } from "./page.ts";
import { onSite } from "./site.ts";

function withPage(work: (page: Page) => Promise<void>, init: () => void = () => {}): Promise<void> {
  return onSite("plain", async (context, site) => {
    await context.addInitScript(init);
    await work(await visit(await context.newPage(), site.url));
  });
}

function withoutPicker(): void {
  delete (globalThis as { showOpenFilePicker?: unknown }).showOpenFilePicker;
}

/** A share sheet that takes only text, as Chromium's; what came is noted. */
function textOnlyShareSheet(): void {
  const shared: { name: string; type: string }[] = [];
  Object.assign(globalThis, { shared, shareFails: null });
  Object.assign(navigator, {
    canShare: ({ files }: { files: File[] }) => files.every((file) => file.type === "text/plain"),
    share: async ({ files }: { files: File[] }) => {
      const { shareFails } = globalThis as unknown as { shareFails: string | null };
      if (shareFails) throw new DOMException("no", shareFails);
      shared.push(...files.map(({ name, type }) => ({ name, type })));
    },
  });
}

function info(page: Page, doc: string) {
  return page.evaluate((doc) => gaugewright.signals.docs.value.get(doc), doc);
}

const file = JSON.stringify({ format: "tally", job: "j1", now: { a: "7", title: "From outside" } });

check("a downloaded file holds everything, and only then is the job in a file", () =>
  withPage(async (page) => {
    await openNew(page, "job");
    await type(page, "job", "a", "1");
    assert.equal((await info(page, "job"))?.filedAt, null);
    assert.equal((await info(page, "job"))?.changesSinceFile, 1);
    const [download, sent] = await Promise.all([
      page.waitForEvent("download"),
      page.evaluate(() => gaugewright.files.sendOut("job", { share: false })),
    ]);
    assert.deepEqual(sent, { how: "left" });
    assert.equal(download.suggestedFilename(), "tally.json");
    assert.equal((JSON.parse(readFileSync(await download.path(), "utf8")) as { now: { a: string } }).now.a, "1");
    const after = await info(page, "job");
    assert.ok(after?.filedAt);
    assert.equal(after?.unfiledSince, null);
    assert.equal(after?.changesSinceFile, 0);
    // The next key press on the same path is a change of its own.
    await type(page, "job", "a", "12");
    assert.equal((await info(page, "job"))?.changesSinceFile, 1);
    assert.ok((await info(page, "job"))?.unfiledSince);
  }, withoutPicker));

check("a share sheet that refuses JSON gets text; a cancelled share is no file", () =>
  withPage(async (page) => {
    await openNew(page, "job");
    await type(page, "job", "a", "1");
    await page.evaluate(() => Object.assign(globalThis, { shareFails: "AbortError" }));
    assert.deepEqual(await page.evaluate(() => gaugewright.files.sendOut("job", { share: true })), { how: "cancelled" });
    assert.equal((await info(page, "job"))?.filedAt, null);
    await page.evaluate(() => Object.assign(globalThis, { shareFails: null }));
    assert.deepEqual(await page.evaluate(() => gaugewright.files.sendOut("job", { share: true })), { how: "left" });
    assert.ok((await info(page, "job"))?.filedAt);
    assert.deepEqual(await page.evaluate(() => (globalThis as unknown as { shared: unknown }).shared), [
      { name: "tally.json.txt", type: "text/plain" },
    ]);
  }, textOnlyShareSheet));

check("pasted text opens; the same job again is not stored until it is kept", () =>
  withPage(async (page) => {
    const first = await page.evaluate((text) => gaugewright.files.openText(text), file);
    assert.equal(first.answer.ok, true);
    assert.ok(first.savedAt);
    assert.deepEqual(await values(page, first.doc), { a: "7", title: "From outside" });
    assert.equal((await info(page, first.doc))?.title, "From outside");
    assert.equal((await info(page, first.doc))?.changesSinceFile, 0);

    const again = await page.evaluate((text) => gaugewright.files.openText(text), file);
    assert.deepEqual(again.known, [first.doc]);
    assert.deepEqual(await values(page, again.doc), { a: "7", title: "From outside" }, "it can be looked at");
    assert.equal(await info(page, again.doc), undefined);
    const refused = await type(page, again.doc, "a", "8");
    assert.equal(refused.answer.code, "no-document");
    assert.equal((await page.evaluate((doc) => gaugewright.host.keep(doc), again.doc)).answer.ok, true);
    assert.equal((await type(page, again.doc, "a", "8")).answer.ok, true);
    assert.deepEqual((await values(page, first.doc))["a"], "7");
  }));

check("what is no job file is refused and nothing else changes", () =>
  withPage(async (page) => {
    await openNew(page, "job");
    const { answer } = await page.evaluate(() => gaugewright.files.openText("<html>no job</html>"));
    assert.equal(answer.ok, false);
    assert.equal(answer.says, "this is no tally");
    assert.deepEqual(await page.evaluate(() => [...gaugewright.signals.docs.value.keys()]), ["job"]);
  }));

check("a dropped file of any name opens", () =>
  withPage(async (page) => {
    const doc = await page.evaluate(async (text) => {
      const opened = new Promise<{ doc: string; answer: { ok: boolean } }>((resolve) =>
        gaugewright.files.acceptDrops((result) => void result.then(resolve)),
      );
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([text], "a strange name.odd"));
      document.body.dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }));
      return (await opened).doc;
    }, file);
    assert.deepEqual(await values(page, doc), { a: "7", title: "From outside" });
  }));

check("the picker greys nothing out: no kind of file is asked for", () =>
  withPage(async (page) => {
    const [chooser] = await Promise.all([
      page.waitForEvent("filechooser"),
      page.getByRole("button", { name: "Open a file" }).click(),
    ]);
    assert.equal(await chooser.element().getAttribute("accept") || null, null);
    await chooser.setFiles({ name: "job.json.txt", mimeType: "text/plain", buffer: Buffer.from(file) });
    await page.getByText("From outside").waitFor();
  }, withoutPicker));

check("a forgotten job is gone from the device", () =>
  withPage(async (page) => {
    await openNew(page, "job");
    await type(page, "job", "a", "1");
    await page.evaluate(() => gaugewright.host.forget("job"));
    assert.equal(await info(page, "job"), undefined);
    await page.reload();
    await page.waitForFunction(() => gaugewright.signals.epoch.value > 0);
    assert.equal(await info(page, "job"), undefined);
  }));
