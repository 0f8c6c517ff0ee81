// The first screen: nothing assumed, nothing large that is no reading, nothing
// lost that was typed.
import assert from "node:assert/strict";
import { check } from "./check.ts";
import type { Page } from "playwright-core";
import { inTheEnd, settled, visit } from "./page.ts";
import { at, goTo, onPage, openExample, sized, rest, typeInto } from "./screens-places.ts";
import type { Site } from "./site.ts";

function onPhone(work: (page: Page, site: Site) => Promise<void>): Promise<void> {
  return onPage({ width: 390, height: 664 }, work);
}

/** Markup without what lit leaves behind, attributes in order, one element a line. */
function plain(html: string): string {
  return html
    .replace(/<!--[\s\S]*?-->/g, "")
    .replace(/\s+/g, " ")
    .replace(/> </g, "><")
    .replace(/ +"/g, '"')
    .replace(/ (>)/g, "$1")
    .replace(/=""/g, "")
    .replace(/<(\w+)((?: [\w-]+(?:="[^"]*")?)+)>/g, (_, tag: string, attributes: string) => `<${tag} ${(attributes.match(/[\w-]+(?:="[^"]*")?/g) ?? []).sort().join(" ")}>`)
    .replace(/></g, ">\n<");
}

check("the static first screen is what the script draws first, so nothing jumps", () =>
  onPhone(async (page, site) => {
    // The worker never answers: the script's first drawing stays.
    site.before = (request, response) => {
      if (!/^\/a\/worker-/.test(request.url ?? "")) return false;
      response.setHeader("Content-Type", "text/javascript");
      response.end("");
      return true;
    };
    await page.goto(site.url);
    await page.waitForFunction(() => globalThis.gaugewright !== undefined);
    const drawn = await page.locator("#app").evaluate((e) => e.innerHTML);
    const file = await page.evaluate(async () => {
      const text = await (await fetch("./")).text();
      return new DOMParser().parseFromString(text, "text/html").getElementById("app")?.innerHTML ?? "";
    });
    // The status line tells the time; above it nothing may move.
    const [above = "", written = ""] = [drawn, file].map((html) => plain(html).split("</main>")[0]);
    assert.ok(above.length > 1000);
    assert.equal(above, written);
  }));

check("a cold first screen has at most seven controls, and they work before the core does", () =>
  onPhone(async (page, site) => {
    await visit(page, site.url);
    await rest(page);
    const controls = page.locator("#app").locator("a[href]:visible, button:visible, input:visible, select:visible");
    // The unit beside the working load belongs to its field.
    assert.equal((await controls.count()) - (await page.locator("select.unit:visible").count()), 7);
    assert.equal(await page.locator(".set").count(), 0);
  }));

check("what is typed before the script runs is taken in", () =>
  onPhone(async (page, site) => {
    let release = () => {};
    const held = new Promise<void>((done) => (release = done));
    await page.route("**/a/app-*.js", async (route) => {
      await held;
      await route.continue();
    });
    await page.goto(site.url, { waitUntil: "commit" });
    await page.locator("#row-load").click();
    await page.keyboard.type("65");
    release();
    await page.waitForFunction(() => globalThis.gaugewright !== undefined);
    await page.keyboard.type("0");
    await settled(page);
    await page.waitForFunction(() => document.getElementById("row-load-echo")?.textContent === "= 650 kN");
    assert.equal(await page.locator("#row-load").inputValue(), "650");
  }));

check("the last sizing is offered, not assumed", () =>
  onPhone(async (page, site) => {
    await sized(page, site.url);
    await page.reload();
    await settled(page);
    await page.locator(".offer").waitFor();
    assert.equal(await page.locator(".set").count(), 0);
    assert.equal(await page.locator("#row-load").inputValue(), "");
    assert.equal(await page.locator("#row-factor").inputValue(), "");
    assert.match((await page.locator(".offer").textContent()) ?? "", /900 kN.*Press 240.*SQ 300/);
    await page.locator(".offer .main-act").click();
    await page.locator(".set .v").waitFor();
    assert.equal(await page.locator("#row-load").inputValue(), "900");
  }));

check("a first key beside the offer starts a new sizing and leaves the last one alone", () =>
  onPhone(async (page, site) => {
    await sized(page, site.url);
    await page.reload();
    await settled(page);
    await page.locator(".offer").waitFor();
    await page.locator("#row-load").click();
    // One key a drawing: some fall between the new document and its first view.
    for (const key of "1000.0000") await page.keyboard.press(key, { delay: 3 });
    await page.waitForFunction(() => document.getElementById("row-load-echo")?.textContent === "= 1000.0000 kN");
    assert.equal(await page.locator("#row-load").inputValue(), "1000.0000");
    assert.equal(await page.locator(".set").count(), 0);
    const old = await page.evaluate(() => gaugewright.host.show("sizing", "sizing"));
    assert.match(String(old["last"]), /^900 kN/);
  }));

check("a reading is large only while the window is open", () =>
  onPhone(async (page, site) => {
    const places = await sized(page, site.url);
    const states = new Set<string>();
    for (const load of ["", "900", "5000", "nonsense", "1,200", "0", "900"]) {
      await page.locator("#row-load").fill(load);
      await rest(page);
      const sizing = await page.evaluate(() => gaugewright.host.show("sizing", "sizing"));
      states.add(String(sizing["state"]));
      const large = await page.locator(".set").count();
      assert.equal(large, sizing["state"] === "open" ? 1 : 0, `${load}: ${String(sizing["state"])}`);
      if (large === 0) assert.doesNotMatch((await page.locator(".large").textContent()) ?? "", /^\s*[\d.]+ (MPa|bar)\s*$/);
    }
    for (const pile of [places.pile, places.closed]) {
      for (const screen of ["size", "pile"]) {
        await goTo(page, at(screen, places.job, pile));
        assert.equal(await page.locator(".set").count(), pile === places.pile ? 1 : 0);
      }
    }
    assert.ok(states.has("open") && states.has("closed") && states.has("incomplete"), [...states].join());
  }));

check("the never-exceed is a bar with a stop, smaller than the set", () =>
  onPhone(async (page, site) => {
    await sized(page, site.url);
    const size = (selector: string) => page.locator(selector).evaluate((e) => parseFloat(getComputedStyle(e).fontSize));
    assert.ok((await size(".stop .v")) * 2 < (await size(".set .v")));
    const edge = await page.locator(".gauge-edge").boundingBox();
    const zone = await page.locator(".gauge-stop").boundingBox();
    assert.ok(edge && zone && Math.abs(edge.x + edge.width / 2 - zone.x) < 3, "the hatched zone begins at the stop");
    assert.ok(await page.locator(".stop-word").isVisible());
    const stated = await page.locator(".efficiency strong").boundingBox();
    const line = await page.locator(".efficiency").boundingBox();
    assert.ok((await size(".efficiency strong")) >= 38, "not calibrated is as large as one line allows");
    assert.ok(stated && line && stated.width <= line.width, "and stays on its line");
  }));

check("with the keyboard open, readings and the box in use are both in sight", () =>
  onPhone(async (page, site) => {
    await sized(page, site.url);
    await page.setViewportSize({ width: 390, height: 330 });
    for (const [box, text] of [["#row-load", "1000"], ["#row-factor", "1.8"], ["#row-load", "5000"]] as const) {
      await page.locator(box).fill("");
      await typeInto(page, box, text);
      await inTheEnd(async () => {
        const reading = await page.locator(".reading").boundingBox();
        const field = await page.locator(box).boundingBox();
        const status = await page.locator(".status").boundingBox();
        assert.ok(reading && field && status);
        assert.ok(reading.y >= -1 && reading.y + reading.height <= 330, `${text}: reading at ${reading.y}, ${reading.height} high`);
        assert.ok(field.y >= reading.y + reading.height && field.y + field.height <= status.y + 1, `${text}: box at ${field.y}, reading to ${reading.y + reading.height}, status ${status.y}`);
      });
      assert.equal(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), true);
    }
  }));

check("a comma that may part thousands is asked about in a band, and the answer holds", () =>
  onPhone(async (page, site) => {
    await sized(page, site.url);
    await page.locator("#row-load").fill("");
    await typeInto(page, "#row-load", "1,200");
    assert.equal(await page.locator("#row-load").inputValue(), "1,200");
    await page.locator(".offers button").last().click();
    await page.waitForFunction(() => document.getElementById("row-load-echo")?.textContent === "= 1200 kN");
    assert.equal(await page.locator(".problem p").count(), 0);
  }));

check("a unit chosen for a box stays with it when the box is cleared", () =>
  onPhone(async (page, site) => {
    await sized(page, site.url);
    await page.locator("#row-load-unit").selectOption("MN");
    await rest(page);
    assert.ok(await page.locator(".problem p").isVisible(), "900 MN is out of range and said so");
    await page.locator("#row-load").fill("");
    await typeInto(page, "#row-load", "0.9");
    assert.equal(await page.locator("#row-load-echo").textContent(), "= 0.9 MN");
    assert.equal(await page.locator("#row-load").inputValue(), "0.9");
    await page.locator(".set .v").waitFor();
  }));

check("without WebAssembly the page says so, and lists the jobs with a way to save each", () =>
  onPage({ width: 390, height: 664 }, async (page, site) => {
    await sized(page, site.url);
    await page.goto(`${site.url}reset.html`);
    await page.locator("#reset").click();
    await page.waitForFunction(() => document.getElementById("done")?.textContent !== "");
    site.patchWorker("delete globalThis.WebAssembly;");
    await page.addInitScript(() => {
      delete (globalThis as { WebAssembly?: unknown }).WebAssembly;
    });
    const session = await page.context().newCDPSession(page);
    await session.send("Network.clearBrowserCache");
    await visit(page, site.url);
    assert.match((await page.locator(".band").first().textContent()) ?? "", /WebAssembly/);
    assert.equal(await page.locator(".set").count(), 0);
    await page.locator('.band a[href="#/jobs"]').click();
    await page.locator(".job").first().waitFor();
    assert.ok((await page.locator(".job").count()) >= 2);
    assert.equal(await page.locator(".job").first().locator("button").count(), 2);
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), true);
  }));

check("a second tab shows and does not edit", () =>
  onPage({ width: 390, height: 664 }, async (page, site) => {
    await sized(page, site.url);
    const second = await page.context().newPage();
    await second.setViewportSize({ width: 390, height: 664 });
    await visit(second, site.url);
    await second.locator(".offer .main-act").click();
    await second.locator(".set .v").waitFor();
    assert.equal(await second.locator("#row-load").getAttribute("readonly"), "");
    assert.ok(await second.locator(".status.read-only").isVisible());
    await page.close();
    await second.waitForFunction(() => !gaugewright.signals.readOnly.value);
    await second.locator(".set .v").waitFor();
    assert.equal(await second.locator("#row-load").getAttribute("readonly"), null);
  }));

check("a name with markup in it is shown as text", () =>
  onPhone(async (page, site) => {
    const name = '<img src=x onerror="globalThis.hit=1">';
    const places = await sized(page, site.url);
    await page.evaluate(
      async ([name, rig, pile]) => {
        await gaugewright.host.enter("sizing", { do: "type", path: `/now/rigs/${rig}/name`, typed: name! });
        await gaugewright.host.enter("sizing", { do: "title", title: name! });
        const docs = [...gaugewright.signals.docs.value.keys()].filter((doc) => doc !== "sizing" && doc !== "shelf");
        await gaugewright.host.enter(docs[0]!, { do: "type", path: `/now/piles/${pile}/mark`, typed: name! });
      },
      [name, places.rig, places.pile],
    );
    for (const place of ["#/more", "#/", at("pick-rig", "sizing"), at("job", "sizing"), "#/jobs", at("piles", places.job), at("pile", places.job, places.pile), at("form", "sizing", `/now/rigs/${places.rig}`)]) {
      await goTo(page, place);
      assert.equal(await page.locator("#app img").count(), 0, place);
    }
    await goTo(page, at("pile", places.job, places.pile));
    assert.equal(await page.locator("#title").textContent(), name);
    await page.reload();
    await settled(page);
    await rest(page);
    assert.equal(await page.locator("#app img").count(), 0);
    assert.equal(await page.evaluate(() => (globalThis as unknown as { hit?: number }).hit), undefined);
  }));

check("the back button goes back through workings", () =>
  onPhone(async (page, site) => {
    await sized(page, site.url);
    await page.locator(".set a.num").click();
    await page.waitForURL(/#\/working\//);
    const first = page.url();
    await page.locator("a.row.in").first().click();
    await page.waitForFunction((first) => location.href !== first, first);
    await page.locator(".back").click();
    await page.waitForFunction((first) => location.href === first, first);
    await page.goBack();
    await page.locator(".set .v").waitFor();
  }));

check("a file that is no job file says why and changes nothing", () =>
  onPhone(async (page, site) => {
    await visit(page, site.url);
    await goTo(page, "#/paste");
    await page.locator("#pasted").fill('{"format": "something else"');
    await page.locator(".main-act").click();
    await page.waitForURL(/#\/incoming/);
    assert.ok((await page.locator(".complaints li").count()) > 0);
    assert.equal(await page.evaluate(() => [...gaugewright.signals.docs.value.values()].filter((info) => info.filedAt !== null).length), 0);
  }));

check("a job that is on the device already is asked about", () =>
  onPhone(async (page, site) => {
    await visit(page, site.url);
    const job = await openExample(page);
    await goTo(page, "#/more");
    await page.locator('section:has(a[href="#/paste"]) button').last().click();
    await page.waitForURL(/#\/incoming/);
    await page.locator(".main .band button", { hasText: "Use the one here" }).click();
    await page.waitForURL(/#\/piles\//);
    assert.ok(page.url().includes(encodeURIComponent(job)));
  }));

check("what is tried on a pile shows and opens, changes nothing, and is used only by a tap", () =>
  onPage({ width: 390, height: 664 }, async (page, site) => {
    await page.goto(site.url);
    await page.locator('header a[href="#/example"]').click();
    await page.locator(".pile-mark a", { hasText: "C1" }).first().click();
    const stands = await page.locator(".set .v").textContent();
    await page.locator('header a[href^="#/size"]').click();
    await page.locator("#row-load").fill("800");
    await page.waitForFunction((before) => document.querySelector(".set .v")?.textContent !== before, stands);
    assert.match((await page.locator(".head .over").textContent()) ?? "", /not entered/);
    const tried = await page.locator(".set .v").textContent();
    // Its working is the trial's, and says so.
    await page.locator(".set a").click();
    await page.locator(".page.working .over", { hasText: "Working of a trial" }).waitFor();
    for (const name of [/^set load$/, /^working load$/]) await page.locator(".row.in", { has: page.locator(".in-name", { hasText: name }) }).click();
    await page.locator(".facts", { hasText: "tried only, not entered" }).waitFor();
    for (let step = 0; step < 3; step++) await page.locator(".back").click();
    assert.equal(await page.locator(".set .v").textContent(), tried, "the trial is still there");
    // Leaving drops it.
    await page.locator(".back").click();
    await page.locator(".page.pile").waitFor();
    assert.equal(await page.locator(".set .v").textContent(), stands);
    await page.locator('header a[href^="#/size"]').click();
    await page.locator("#row-load").waitFor();
    assert.equal(await page.locator("#row-load").inputValue(), "900");
    // Another pile type is tried with it, and this time both are used.
    await page.locator("#row-load").fill("800");
    await page.locator(".tries .choice", { hasText: "SP 400" }).click();
    await page.locator('.tries .choice[aria-pressed="true"]', { hasText: "SP 400" }).waitFor();
    await page.locator("header .main-act").click();
    await page.locator(".page.pile").waitFor();
    await page.waitForFunction((before) => document.querySelector(".set .v")?.textContent !== before, stands);
    assert.match(await page.evaluate(() => document.querySelector(".status")?.textContent ?? ""), /1 change\)/, "taken over as one entry");
  }),
);
