// Storage that is refused, breaks, or comes back.
import assert from "node:assert/strict";
import { check } from "./check.ts";
import type { Page } from "playwright-core";
import { openNew, rawText, settled, type, values, visit } from "./page.ts";
import { onSite } from "./site.ts";

const denied = `Object.defineProperty(globalThis, "indexedDB", {
  value: { open() { throw new DOMException("not allowed here", "SecurityError"); } },
});`;

function storageState(page: Page) {
  return page.evaluate(() => gaugewright.signals.storage.value);
}

check("without storage everything works in memory and the page says so", () =>
  onSite("plain", async (context, site) => {
    site.patchWorker(denied);
    const page = await visit(await context.newPage(), site.url);
    await openNew(page, "sizing");
    const { answer, savedAt } = await type(page, "sizing", "a", "1");
    assert.equal(answer.ok, true);
    assert.equal(savedAt, undefined, "nothing is called saved");
    const storage = await storageState(page);
    assert.equal(storage.kind, "memory");
    assert.match(storage.why ?? "", /not allowed here/);
    // Even a silent core costs nothing: the page holds the rows meanwhile.
    const bad = await type(page, "sizing", "bad", "silence");
    assert.equal(bad.answer.code, "set-aside");
    assert.deepEqual(await values(page, "sizing"), { a: "1" });
  }),
);

check("a storage that is busy at the start is waited for: its jobs never look lost", () =>
  onSite("plain", async (context, site) => {
    // The second page gets its worker's script from the server, and from no cache.
    site.patchWorker("");
    await context.addInitScript(() => Reflect.deleteProperty(Navigator.prototype, "serviceWorker"));
    const before = await visit(await context.newPage(), site.url);
    await openNew(before, "sizing");
    assert.ok((await type(before, "sizing", "a", "1")).savedAt);
    await before.close();
    // The first answer never comes (an open handle blocks it), the second is a failure, the third is right.
    site.patchWorker(`
      const open = IDBFactory.prototype.open;
      let calls = 0;
      IDBFactory.prototype.open = function (...args) {
        if (++calls === 1) {
          open.call(this, "other", 1).onsuccess = ({ target }) => (globalThis.held = target.result);
          return open.call(this, "other", 2);
        }
        if (calls === 2) throw new DOMException("the storage is busy", "UnknownError");
        return open.apply(this, args);
      };`);
    const page = await context.newPage();
    await page.goto(site.url);
    await page.waitForFunction(() => globalThis.gaugewright?.signals.storage.value.kind === "waiting");
    const during = openNew(page, "sizing");
    await page.waitForFunction(() => gaugewright.signals.epoch.value > 0);
    assert.equal((await during).answer.ok, true);
    assert.deepEqual(await values(page, "sizing"), { a: "1" });
    assert.deepEqual(await storageState(page), { kind: "device", unsaved: 0 });
  }),
);

check("a dead database handle is opened anew once, and the entry is durable", () =>
  onSite("plain", async (context, site) => {
    const page = await visit(await context.newPage(), site.url);
    await openNew(page, "sizing");
    await page.workers()[0]!.evaluate(() => {
      const alive = IDBDatabase.prototype.transaction;
      let deaths = 1;
      IDBDatabase.prototype.transaction = function (...args: Parameters<typeof alive>) {
        if (deaths-- > 0) throw new DOMException("the connection is closing", "InvalidStateError");
        return alive.apply(this, args);
      };
    });
    const { answer, savedAt } = await type(page, "sizing", "a", "1");
    assert.equal(answer.ok, true);
    assert.ok(savedAt);
    await page.reload();
    await settled(page);
    assert.deepEqual(await values(page, "sizing"), { a: "1" });
  }),
);

check("a device that takes no more is told about; what waited is written when it takes again", () =>
  onSite("plain", async (context, site) => {
    const page = await visit(await context.newPage(), site.url);
    await openNew(page, "sizing");
    await page.workers()[0]!.evaluate(() => {
      const healthy = IDBDatabase.prototype.transaction;
      IDBDatabase.prototype.transaction = function (...args: Parameters<typeof healthy>) {
        if (args[1] === "readwrite") throw new DOMException("the disk is full", "QuotaExceededError");
        return healthy.apply(this, args);
      };
      Object.assign(globalThis, { heal: () => (IDBDatabase.prototype.transaction = healthy) });
    });
    const { answer, savedAt } = await type(page, "sizing", "a", "1");
    assert.equal(answer.ok, true, "the entry counts");
    assert.equal(savedAt, undefined, "but it is not called saved");
    const storage = await storageState(page);
    assert.equal(storage.unsaved > 0, true);
    assert.match(storage.why ?? "", /disk is full/);
    assert.match(await rawText(page, "sizing"), /"text":"1"/, "a file can be saved even so");
    await page.workers()[0]!.evaluate(() => (globalThis as unknown as { heal(): void }).heal());
    assert.ok((await type(page, "sizing", "b", "2")).savedAt);
    assert.equal((await storageState(page)).unsaved, 0);
    await page.reload();
    await settled(page);
    assert.deepEqual(await values(page, "sizing"), { a: "1", b: "2" });
  }),
);
