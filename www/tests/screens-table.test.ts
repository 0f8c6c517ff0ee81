// Tables of piles come in and go out: what a person pastes is asked about,
// shown, refused in words and only then taken; the list of very many piles stays
// one that fingers, keys and screen readers can use.
//
// The tables are of the sorts that schedules of piles come with: common
// practice, no source.
import assert from "node:assert/strict";
import type { Page } from "playwright-core";
import { check } from "./check.ts";
import { visit } from "./page.ts";
import { at, goTo, onPage, openExample, rest } from "./screens-places.ts";

const phone = { width: 390, height: 664 };

/** Puts a text on the page's clipboard and pastes it into the box, as a person does. */
async function paste(page: Page, doc: string, text: string): Promise<void> {
  await goTo(page, at("bring", doc));
  await page.locator("#table").evaluate((box, text) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData("text/plain", text);
    box.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
  }, text);
  await page.waitForURL(/#\/bring-rows\//);
  await page.locator(".bring-rows .main .lead[role=status]").waitFor({ state: "detached" });
}

/** Opens the example and hands its document on. */
function withExample(work: (page: Page, doc: string) => Promise<void>): Promise<void> {
  return onPage(phone, async (page, site) => {
    await visit(page, site.url);
    await work(page, await openExample(page));
  });
}

function texts(page: Page, selector: string): Promise<string[]> {
  return page.locator(selector).evaluateAll((all) => all.map((e) => (e.textContent ?? "").replace(/\s+/g, " ").trim()));
}

async function row(page: Page, mark: string): Promise<string> {
  const all = await texts(page, ".brought > li");
  return all.find((text) => text.startsWith(mark)) ?? "";
}

function piles(page: Page, doc: string): Promise<number> {
  return page.evaluate(async (doc) => ((await gaugewright.host.show(doc, "info")) as unknown as { piles: number }).piles, doc);
}

const german = [
  "Pile No.;Load [kN];Toe level (m);Platform;Type",
  "C1;900;-5,40;12,60;SQ 300", // as it is
  "C2;950,5;-5,90;;", // another load
  "D1;400,5;-6,00;12,60;SQ 300", // new
  "1-Mar;500;-6,00;12,60;SQ 300", // a mark that a spreadsheet made a date
  "D3;nine;-5,00;12,60;SQ 350", // refused, for two reasons
  "D4;300;-5,00;12,60;", // two piles with one mark
  "D4;310;-5,00;12,60;",
].join("\r\n");

check("a table with semicolons and decimal commas is asked about, shown and taken", () =>
  withExample(async (page, doc) => {
    const before = await piles(page, doc);
    await paste(page, doc, german);
    assert.match(await page.locator(".table-question").innerText(), /In which unit is “Platform”\?/);
    assert.equal(await page.locator(".main-act").count(), 0, "nothing is taken before it is answered");
    await page.locator(".table-question button", { hasText: "metre" }).first().click();
    await page.locator(".brought > li").first().waitFor();
    assert.deepEqual(await texts(page, ".brought-counts > div"), ["new2", "changed1", "as is1", "not taken3"]);
    assert.match(await row(page, "D1"), /Working load ?400.5 kN.*Founding level ?−6.00 m/);
    assert.match(await row(page, "C2"), /900 kN.*950.5 kN/);
    assert.match(await row(page, "1-Mar"), /looks like a date, a number or an error that a spreadsheet made of a mark/);
    assert.match(await row(page, "D3"), /not taken.*Line 6.*“nine” is not a number.*“SQ 350” is not in the job/);
    assert.match(await row(page, "D4"), /The mark D4 stands in several lines: 7, 8\./);
    assert.match(await page.locator(".brought-left").innerText(), /3 rows are not taken/);

    await page.locator("#only").selectOption("refused");
    await page.waitForFunction(() => document.querySelectorAll(".brought > li").length === 3);
    assert.equal(await piles(page, doc), before, "looking changes nothing");

    assert.equal(await page.locator(".main-act").innerText(), "Take 3 piles");
    await page.locator(".main-act").click();
    await page.waitForURL(/#\/piles\//);
    assert.match(await page.locator(".band").innerText(), /New: 2\. Changed: 1\. As they are: 1\. Not taken: 3\./);
    assert.equal(await piles(page, doc), before + 2);
    await page.locator(".pile-mark a", { hasText: "1-Mar" }).waitFor();
  }));

check("1,200 is asked about once, and the answer can be changed", () =>
  withExample(async (page, doc) => {
    await paste(page, doc, "Mark;Load [kN]\nD1;1,200\nD2;1,250\n");
    assert.match(await page.locator(".table-question").innerText(), /1,200 in line 2 can be read in two ways/);
    await page.locator(".table-question button", { hasText: "point" }).click();
    await page.locator(".brought > li").first().waitFor();
    assert.match(await row(page, "D1"), /1200 kN/);
    assert.equal(await page.locator(".table-question").count(), 0);
    await page.locator('a[href^="#/bring-columns"]').click();
    await page.locator("#decimal-sign").selectOption(",");
    await page.locator('a[href^="#/bring-rows"]').click();
    await page.locator(".brought > li", { hasText: "1.200 kN" }).waitFor();
  }));

check("a column mapped twice is said, and choosing one puts it right", () =>
  withExample(async (page, doc) => {
    await paste(page, doc, "Mark,Load [kN],Working load [kN]\nD1,900,950\n");
    assert.match(await page.locator(".main .band").innerText(), /Working load is to be read from “Load \[kN\]” and “Working load \[kN\]”/);
    assert.equal(await page.locator(".main-act").count(), 0);
    await page.locator('.band a[href^="#/bring-columns"]').click();
    assert.match(await page.locator(".main .band").innerText(), /One column can fill it: choose/);
    await page.locator("#column-1").selectOption("");
    await page.locator(".main .band").waitFor({ state: "detached" });
    await page.locator('a[href^="#/bring-rows"]').click();
    assert.match(await row(page, "D1"), /950 kN/);
    // A field given to a second column by hand is said as well.
    await page.locator('a[href^="#/bring-columns"]').click();
    await page.locator("#column-1").selectOption("mark");
    await page.locator("#column-0").selectOption("mark");
    assert.match(await page.locator(".main .band").innerText(), /Mark is to be read from/);
  }));

check("what is typed stays in the box until its screens are left, and the browser asks before it is lost", () =>
  withExample(async (page, doc) => {
    await goTo(page, at("bring", doc));
    assert.equal((await page.locator("#table-kept").innerText()).trim(), "");
    await page.locator("#table").fill("Mark;Load [kN]\nD1;900");
    assert.match(await page.locator("#table-kept").innerText(), /not kept/);
    await page.locator(".main-act").click();
    await page.locator(".brought > li").waitFor();
    await page.locator(".back").click();
    assert.equal(await page.locator("#table").inputValue(), "Mark;Load [kN]\nD1;900");
    const stopped = await page.evaluate(() => !dispatchEvent(new Event("beforeunload", { cancelable: true })));
    assert.ok(stopped, "leaving the page asks");
    await goTo(page, at("piles", doc));
    await goTo(page, at("bring-rows", doc));
    assert.match(await page.locator(".lead").innerText(), /No table is here/);
    assert.ok(await page.evaluate(() => dispatchEvent(new Event("beforeunload", { cancelable: true }))), "there is nothing to lose");
  }));

check("a file dropped on the screen for tables is a table, in Windows-1252 too, and no table is said to be none", () =>
  withExample(async (page, doc) => {
    const drop = (bytes: number[]) =>
      page.evaluate((bytes) => {
        const dataTransfer = new DataTransfer();
        dataTransfer.items.add(new File([new Uint8Array(bytes)], "piles.csv"));
        dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }));
      }, bytes);
    await goTo(page, at("bring", doc));
    await drop([..."Mark;Note\nD1;caf"].map((c) => c.charCodeAt(0)).concat(0xe9));
    await page.locator(".brought > li", { hasText: "café" }).waitFor();
    assert.match(await page.locator(".main .hint").first().innerText(), /Windows-1252/);
    await page.locator(".main-act").click();
    await page.waitForURL(/#\/piles\//);
    await rest(page);
    const raw = await page.evaluate(async (doc) => new TextDecoder().decode((await gaugewright.host.rawSave(doc)).bytes), doc);
    assert.match(raw, /café/, "what waits in the journal is text");
    await goTo(page, at("bring", doc));
    await drop([0x50, 0x4b, 3, 4, 0]);
    await page.locator(".lead", { hasText: "cannot be read" }).waitFor();
    assert.match(await page.locator(".main").innerText(), /file of another program/);
  }));

check("20,000 rows go to the worker once, come back in small messages, and make a list that keys go through", () =>
  withExample(async (page, doc) => {
    await page.evaluate(() => {
      const seen = { longest: 0, bytesSent: 0 };
      Object.assign(globalThis, { seen });
      const { parse } = JSON;
      JSON.parse = (text: string, ...more) => {
        seen.longest = Math.max(seen.longest, text.length);
        return parse(text, ...more) as unknown;
      };
      const { postMessage } = Worker.prototype;
      Worker.prototype.postMessage = function (message: { verb?: string; bytes?: Uint8Array }, ...more: never[]) {
        if (message.verb === "show") seen.bytesSent += message.bytes?.length ?? 0;
        postMessage.call(this, message, ...more);
      };
    });
    const lines = Array.from({ length: 20_000 }, (_, i) => `P${i + 1};${500 + (i % 500)},5;-5,20;12,60;SQ 300`);
    const text = ["Mark;Load [kN];Toe level [m];Platform [m];Type", ...lines].join("\n");
    await paste(page, doc, text);
    await page.locator(".brought > li").first().waitFor();
    await page.locator(".pages button").click();
    await page.locator(".brought > li", { hasText: "P21" }).first().waitFor();
    const sent = await page.evaluate(() => (globalThis as unknown as { seen: { longest: number; bytesSent: number } }).seen);
    assert.equal(sent.bytesSent, text.length, "the table goes over once");
    assert.ok(sent.longest < 64_000, `an answer of ${sent.longest} characters`);
    assert.equal(await page.locator(".main-act").innerText(), "Take 20000 piles");
    await page.locator(".main-act").click();
    await page.waitForURL(/#\/piles\//, { timeout: 60_000 });
    await page.locator(".pile-count", { hasText: "20008 piles" }).waitFor({ timeout: 60_000 });

    const list = page.locator(".pile-rows");
    assert.equal(await list.getAttribute("aria-rowcount"), "20008");
    assert.ok((await page.locator(".pile-row").count()) < 40, "only rows in sight are drawn");
    const focused = () => page.evaluate(() => document.activeElement?.closest(".pile-row")?.getAttribute("aria-rowindex"));
    await list.focus();
    for (let i = 0; i < 25; i++) await page.keyboard.press("ArrowDown");
    assert.equal(await focused(), "25");
    await page.keyboard.press("ArrowUp");
    assert.equal(await focused(), "24");
    await page.keyboard.press("End");
    assert.equal(await focused(), "20008");
    await page.waitForFunction(() => document.activeElement?.textContent === "P20000");
    assert.equal(await focused(), "20008", "the row keeps the focus when its pile comes");
    await page.keyboard.press("Enter");
    await page.waitForURL(/#\/pile\//);
    await page.locator(".pile h1", { hasText: "P20000" }).waitFor();
    await page.goBack();
    await page.locator(".pile-open", { hasText: "P19999" }).waitFor();
    await page.locator("#find").pressSequentially("P1999");
    await page.locator(".pile-count", { hasText: "11 of 20008 piles" }).waitFor();
    // The count is there before the rows of the choice are.
    await page.waitForFunction(() => document.querySelector('[aria-rowindex="2"] .pile-open')?.textContent === "P19990");
    assert.deepEqual(await texts(page, '[aria-rowindex="1"] .pile-open, [aria-rowindex="2"] .pile-open'), ["P1999", "P19990"]);
  }), 240_000);

check("too many rows are said to be too many", () =>
  withExample(async (page, doc) => {
    await paste(page, doc, "Mark\n" + Array.from({ length: 20_001 }, (_, i) => `P${i}`).join("\n"));
    assert.match(await page.locator(".main").innerText(), /There are too many rows: at most 20000/);
  }));

check("the piles and the cutting list go out as tables, and the list as text", () =>
  withExample(async (page, doc) => {
    await page.evaluate(() => {
      const out: { name: string; text: Promise<string> }[] = [];
      Object.assign(globalThis, { out });
      navigator.canShare = () => true;
      navigator.share = async (data) => {
        const file = data?.files?.[0];
        if (file) out.push({ name: file.name, text: file.text() });
      };
      navigator.clipboard.write = async ([item]) => {
        out.push({ name: "clipboard", text: (await item!.getType("text/plain")).text() });
      };
    });
    const last = () =>
      page.evaluate(async () => {
        const one = (globalThis as unknown as { out: { name: string; text: Promise<string> }[] }).out.at(-1);
        return { name: one?.name ?? "", text: (await one?.text) ?? "" };
      });
    const count = () => page.evaluate(() => (globalThis as unknown as { out: unknown[] }).out.length);
    const tap = async (text: string) => {
      const before = await count();
      await page.locator(".hand-out button", { hasText: text }).click();
      await page.waitForFunction((before) => (globalThis as unknown as { out: unknown[] }).out.length > before, before);
      return last();
    };
    await goTo(page, at("hand-out", doc));
    const points = await tap("Share");
    assert.equal(points.name, "quay-shed-north-row-piles.csv");
    assert.match(points.text, /^Mark,Pile type,.*Founding level \[m\]/);
    assert.match(points.text, /^C1,SQ 300,.*,-5\.40,/m);

    await page.locator(".choice", { hasText: "Comma" }).click();
    assert.match(await page.locator(".hand-out").innerText(), /set to German.*parted by semicolons/);
    assert.match((await tap("Share")).text, /^C1;SQ 300;.*;-5,40;/m);

    await page.locator(".choice", { hasText: "Cutting list" }).click();
    const cutting = await tap("Share");
    assert.equal(cutting.name, "quay-shed-north-row-cutting.csv");
    const message = await tap("Copy as text");
    assert.equal(message.name, "clipboard");
    assert.match(message.text, /^Cutting list: Quay shed, north row\nC1: cut 1,45 m from the head, saw at 11,80 m\n/);
    assert.match(await page.locator(".band").innerText(), /on the clipboard/);

    // Where the clipboard is refused, the list can be copied by hand.
    await page.evaluate(() => (navigator.clipboard.write = () => Promise.reject(new Error("no"))));
    await page.locator(".hand-out button", { hasText: "Copy as text" }).click();
    await page.locator("#plain").waitFor();
    assert.match(await page.locator("#plain").inputValue(), /^Cutting list/);
  }));

check("what goes out comes in again as it is", () =>
  withExample(async (page, doc) => {
    for (const sign of [".", ","]) {
      const text = await page.evaluate(
        async ([doc, sign]) => new TextDecoder().decode((await gaugewright.host.showBytes(doc!, "export", { what: "piles", sign: sign!, bytes: "text" })).bytes),
        [doc, sign],
      );
      await paste(page, doc, text);
      for (const said of ["comma", "point"]) {
        const asked = page.locator(".table-question button", { hasText: said });
        if (said === (sign === "," ? "comma" : "point") && (await asked.count()) > 0) await asked.click();
      }
      await page.locator(".brought-counts").waitFor();
      assert.deepEqual(await texts(page, ".brought-counts > div"), ["new0", "changed0", "as is8", "not taken0"], `with ${sign}`);
      assert.ok(await page.locator(".main-act").isDisabled());
    }
  }));
