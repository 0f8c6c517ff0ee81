// Two tabs: one edits, the other reads, and takes over when the first is gone.
import assert from "node:assert/strict";
import { check } from "./check.ts";
import { openNew, settled, type, values, visit } from "./page.ts";
import { onSite } from "./site.ts";

check("the second tab reads, refuses entries in words, and is promoted when the first closes", () =>
  onSite("plain", async (context, site) => {
    const first = await visit(await context.newPage(), site.url);
    await openNew(first, "sizing");
    await type(first, "sizing", "a", "1");

    const second = await visit(await context.newPage(), site.url);
    assert.equal(await second.evaluate(() => gaugewright.signals.readOnly.value), true);
    assert.deepEqual(await values(second, "sizing"), { a: "1" });
    const refused = await type(second, "sizing", "a", "from the second tab");
    assert.equal(refused.answer.code, "read-only");
    assert.match(String(refused.answer.says), /tab/);
    assert.equal(refused.savedAt, undefined);

    await type(first, "sizing", "a", "2");
    await first.close();
    await second.waitForFunction(() => !gaugewright.signals.readOnly.value && gaugewright.signals.epoch.value > 1);
    assert.deepEqual(await values(second, "sizing"), { a: "2" }, "the promoted tab has read anew");
    assert.equal((await type(second, "sizing", "a", "3")).answer.ok, true);
    assert.deepEqual(await values(second, "sizing"), { a: "3" });
  }),
);

check("the reading tab can take over; the other one then reads, and nothing is lost on the way", () =>
  onSite("plain", async (context, site) => {
    const first = await visit(await context.newPage(), site.url);
    await openNew(first, "sizing");
    await type(first, "sizing", "a", "1");
    const second = await visit(await context.newPage(), site.url);
    await second.evaluate(() => gaugewright.host.takeOver());
    await second.waitForFunction(() => !gaugewright.signals.readOnly.value && gaugewright.signals.epoch.value > 1);
    await first.waitForFunction(() => gaugewright.signals.readOnly.value);
    assert.equal((await type(first, "sizing", "a", "late")).answer.code, "read-only");
    assert.equal((await type(second, "sizing", "b", "2")).answer.ok, true);
    assert.deepEqual(await values(second, "sizing"), { a: "1", b: "2" });
    // When the second closes, the first edits again.
    await second.close();
    await first.waitForFunction(() => !gaugewright.signals.readOnly.value);
    assert.deepEqual(await values(first, "sizing"), { a: "1", b: "2" });
    assert.equal((await type(first, "sizing", "c", "3")).answer.ok, true);
  }),
);

check("a write behind this tab's back is noticed: nothing is overwritten, the job is read anew", () =>
  onSite("plain", async (context, site) => {
    const page = await visit(await context.newPage(), site.url);
    await openNew(page, "sizing");
    await type(page, "sizing", "a", "1");
    // Somebody without the lock: the row moves on by one.
    await page.evaluate(
      () =>
        new Promise<void>((done, failed) => {
          const opening = indexedDB.open("gaugewright");
          opening.onerror = () => failed(opening.error);
          opening.onsuccess = () => {
            const tx = opening.result.transaction("docs", "readwrite");
            const docs = tx.objectStore("docs");
            docs.get("sizing").onsuccess = (event) => {
              const row = (event.target as IDBRequest<{ rev: number; by: string }>).result;
              docs.put({ ...row, rev: row.rev + 1, by: "another" });
            };
            tx.oncomplete = () => {
              opening.result.close();
              done();
            };
          };
        }),
    );
    const refused = await type(page, "sizing", "a", "2");
    assert.equal(refused.answer.code, "conflict");
    await settled(page);
    assert.deepEqual(await values(page, "sizing"), { a: "1" });
    assert.equal((await type(page, "sizing", "a", "3")).answer.ok, true);
    assert.deepEqual(await values(page, "sizing"), { a: "3" });
  }),
);
