// A person fills the criterion of a sizing for each scheme by taps and keys at
// phone size, and reads the set load. The sizing has a rig and a pile of the
// example; the set loads are worked by hand beside each scheme.
import assert from "node:assert/strict";
import type { Page } from "playwright-core";
import { check } from "./check.ts";
import { Hand } from "./hand.ts";
import { settled } from "./page.ts";
import { at, goTo, onPage, rest, sized, sizes } from "./screens-places.ts";

const phone = sizes[0];

interface Sized {
  criterion: string;
  pile: string;
}

/** The boxes of a form, found by the end of their place in the job. */
class Form extends Hand {
  async fill(place: string, text: string): Promise<void> {
    await this.tap(`[data-path$="${place}"]`);
    await this.key(text);
    await this.page.keyboard.press("Enter");
    await rest(this.page);
  }

  async pick(label: string): Promise<void> {
    this.taps++;
    await this.page.getByRole("button", { name: label, exact: true }).first().click();
    await rest(this.page);
  }
}

/** What a scheme asks of the criterion and of the pile, and its set load in kN. */
const schemes: Record<string, { criterion(form: Form): Promise<void>; pile(form: Form): Promise<void>; load: string }> = {
  // 900 kN with 2.5, drag load 100 kN with 1.2: 2250 + 120.
  "single factor on the working load": {
    async criterion(form) {
      await form.fill("/drag", "100");
      await form.fill("/dragFactor", "1.2");
      await form.tap("button.choice", "factor 2.5, 30 s, 5 mm at most");
      await rest(form.page);
    },
    async pile() {},
    load: "2370.0",
  },
  // An average rating of 2.5, low redundancy: 0.56; 840/0.56.
  "strength reduction factor": {
    async criterion(form) {
      await form.pick("strength reduction factor");
      await form.pick("low");
      await form.fill("/reduction/risk", "2.5");
    },
    pile: (form) => form.fill("/designAction", "840"),
    load: "1500.0",
  },
  // One test of 1400 kN: R_ck = 1000 and xi = 1.4; 1.4 x 1.1 x 1000.
  "characteristic value from static tests": {
    async criterion(form) {
      await form.pick("characteristic value from static tests");
      await form.pick("Add a static test");
      await form.fill("/resistance", "1400");
      await form.pick("Add a combination");
      await form.fill("/factor", "1.1");
      await form.fill("/credit/by", "Eva");
      await form.fill("/credit/why", "TP1");
    },
    pile: (form) => form.fill("/load", "1000"),
    load: "1540.0",
  },
  // 975/0.65.
  "resistance factor": {
    async criterion(form) {
      await form.pick("resistance factor");
      await form.fill("/resistanceFactor", "0.65");
    },
    pile: (form) => form.fill("/designAction", "975"),
    load: "1500.0",
  },
};

async function places(page: Page, doc: string): Promise<Sized> {
  return page.evaluate(async (doc) => (await gaugewright.host.show(doc, "sizing")) as unknown as Sized, doc);
}

for (const [scheme, errand] of Object.entries(schemes)) {
  check(`errand at ${phone.width} x ${phone.height}: ${scheme}`, () =>
    onPage(phone, async (page, site) => {
      const { sizing } = await sized(page, site.url);
      const { criterion, pile } = await places(page, sizing);
      const form = new Form(page);
      await goTo(page, at("form", sizing, `/now/piles/${pile}`));
      await form.tap(`a.row[href*="criteria"]`);
      await errand.criterion(form);
      await form.tap(".back");
      await errand.pile(form);
      await goTo(page, "#/");
      const answer = await page.evaluate(async (doc) => (await gaugewright.host.show(doc, "sizing")) as unknown as { setLoad: { says: string } | null; big: string }, sizing);
      assert.equal(answer.setLoad?.says, errand.load, answer.big);
      if (scheme.startsWith("single")) assert.equal(await page.locator("#row-factor").inputValue(), "2.5");
      else {
        const row = page.locator(`a.row[href*="${criterion}"]`);
        assert.match(await row.innerText(), new RegExp(scheme));
        const who = new Hand(page);
        await who.tap(`a.row[href*="${criterion}"]`);
        await who.tap(".field .hint a");
        await page.locator(".working .source .mark").waitFor();
        who.rests(`who says so, ${scheme}`, 2);
      }
      form.rests(scheme, 40);
    }),
  );
}

/** Where a factor shows: what is tapped first there, and what second where the first does not say it all. */
const asking: Record<string, { hash(sizing: string, made: Sized): string; tap: string[]; says: RegExp[] }> = {
  "first screen": { hash: () => "#/", tap: [".row.typed a.num"], says: [/2\.00/, /designer's note 7/, /Ada/] },
  "what if": { hash: (doc, { pile }) => at("size", doc, pile), tap: [".row.typed a.num"], says: [/designer's note 7/, /Ada/] },
  pile: { hash: (doc, { pile }) => at("pile", doc, pile), tap: [".line:has-text('Factor on the working load') a"], says: [/designer's note 7/, /Ada/] },
  "pile, by its set load": { hash: (doc, { pile }) => at("pile", doc, pile), tap: [".line:has-text('Set load') a", "a.in:has-text('FS')"], says: [/designer's note 7/, /Ada/] },
  limits: { hash: (doc) => at("limits", doc), tap: [".limit:has-text('Gauge') .figures a", "a.in:has-text('0.75')"], says: [/recalled from memory/] },
  criterion: { hash: (doc, { criterion }) => at("form", doc, `/now/criteria/${criterion}`), tap: [".field .hint a:has-text('conventional factor')"], says: [/designer's note 7/, /Ada/] },
  "criteria sheet": { hash: (doc) => at("sheet", doc, "criteria"), tap: [".line:has-text('Factor on the working load') a"], says: [/designer's note 7/, /Ada/] },
};

check("who says 2.0: two taps from every screen on which a factor shows", () =>
  onPage(phone, async (page, site) => {
    const { sizing } = await sized(page, site.url);
    const made = await places(page, sizing);
    // Who types stands in a sitting from its beginning: a new one begins.
    await page.reload();
    await settled(page);
    await page.evaluate(
      async ([doc, { criterion }]) => {
        await gaugewright.host.setWho("Ada");
        for (const [name, typed] of [["factor", "2.00"], ["basis", "designer's note 7"]] as const) {
          await gaugewright.host.enter(doc, { do: "type", path: `/now/criteria/${criterion}/${name}`, typed });
        }
      },
      [sizing, made] as const,
    );
    await page.reload();
    await page.locator(".offer .main-act").click();
    await rest(page);
    for (const [screen, { hash, tap, says }] of Object.entries(asking)) {
      await goTo(page, hash(sizing, made));
      const hand = new Hand(page);
      for (const place of tap) {
        await hand.tap(place);
        await rest(page);
      }
      await page.locator(".working .source .mark").first().waitFor();
      const said = await page.locator(".main").innerText();
      for (const one of says) assert.match(said, one, screen);
      hand.rests(`who says so, ${screen}`, 2);
    }
    // With nobody's basis it says so.
    await page.evaluate(async ([doc, { criterion }]) => gaugewright.host.enter(doc, { do: "type", path: `/now/criteria/${criterion}/basis`, typed: "" }), [sizing, made] as const);
    await goTo(page, "#/");
    await page.reload();
    await page.locator(".offer .main-act").click();
    await page.locator(".row.typed a.num").click();
    await page.getByText("no basis stated").waitFor();
  }),
);

check("the sketch of the ground says which part is which, and fits the sheet's page", () =>
  onPage(phone, async (page, site) => {
    const { sizing } = await sized(page, site.url);
    const { criterion, pile } = await places(page, sizing);
    const form = new Form(page);
    await goTo(page, at("form", sizing, `/now/criteria/${criterion}`));
    for (const [place, text] of [["/drag", "80"], ["/dragFactor", "1.2"], ["/dugAway", "67.2"], ["/hold/time", "30"]] as const) await form.fill(place, text);
    await form.pick("set, with a least toe level");
    const zones = page.locator(".ground .zone");
    assert.deepEqual(await zones.locator("strong").allInnerTexts(), ["Will be dug away", "Will settle", "Stays"]);
    assert.match(await zones.nth(0).innerText(), /T: 67\.2 kN/);
    assert.match(await zones.nth(1).innerText(), /N: nothing entered.*D: 80 kN/);
    // Told apart by hatches of different shape; each band is as high as its words.
    const bands = await zones.evaluateAll((all) => all.map((e) => [e.querySelector("pattern path")?.getAttribute("d"), e.querySelector("svg")?.clientHeight, e.clientHeight]));
    assert.equal(new Set(bands.map(([hatch]) => hatch)).size, 3);
    for (const [, drawn, whole] of bands) assert.equal(drawn, whole);
    await goTo(page, at("form", sizing, `/now/piles/${pile}`));
    await form.fill("/workingLoad", "500");
    await goTo(page, at("sheet", sizing, "criteria"));
    await zones.first().waitFor();
    const paper = await page.pdf({ preferCSSPageSize: true });
    assert.equal(paper.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length, 1, "one page for a pile type and rig");
  }),
);
