// A browser without WebAssembly: the page says why, and gives the jobs out.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { check } from "./check.ts";
import { coreState, openNew, type, visit } from "./page.ts";
import { onSite } from "./site.ts";

check("without WebAssembly the stored jobs can be saved as files", () =>
  onSite("plain", async (context, site) => {
    const before = await visit(await context.newPage(), site.url);
    await openNew(before, "sizing");
    await type(before, "sizing", "a", "kept");
    await before.goto(`${site.url}reset.html`);
    await before.click("#reset");
    await before.getByText("Done.").waitFor();
    await (await context.newCDPSession(before)).send("Network.clearBrowserCache");
    await before.close();

    site.patchWorker("delete globalThis.WebAssembly;");
    await context.addInitScript(() => {
      delete (globalThis as { WebAssembly?: unknown }).WebAssembly;
      // The plain download, as on a phone.
      delete (globalThis as { showOpenFilePicker?: unknown }).showOpenFilePicker;
    });
    // The page knows by itself: the worker has not even arrived.
    const early = await context.newPage();
    await early.route("**/a/worker-*", () => {});
    await early.goto(site.url);
    const known = await coreState(early);
    assert.ok(known.state === "unavailable" && known.reason === "no-wasm");
    await early.close();

    const page = await visit(await context.newPage(), site.url);
    const core = await coreState(page);
    assert.equal(core.state, "unavailable");
    assert.ok(core.state === "unavailable" && core.reason === "no-wasm");
    assert.match(core.why, /WebAssembly/);
    assert.match(core.why, /Lockdown Mode/);
    assert.equal(await page.getByText("WebAssembly").first().isVisible(), true, "the page says so");
    const [download, sent] = await Promise.all([
      page.waitForEvent("download"),
      page.evaluate(() => gaugewright.files.sendOut("sizing", { share: false })),
    ]);
    assert.deepEqual(sent, { how: "left" });
    assert.match(readFileSync(await download.path(), "utf8"), /kept/);
  }),
);
