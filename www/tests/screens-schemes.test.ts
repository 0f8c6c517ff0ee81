// A person fills the criterion of a sizing for each scheme by taps and keys at
// phone size, and reads the set load. The sizing has a rig and a pile of the
// example; the set loads are worked by hand beside each scheme.
import assert from "node:assert/strict";
import type { Page } from "playwright-core";
import { check } from "./check.ts";
import { Hand } from "./hand.ts";
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
      }
      form.rests(scheme, 40);
    }),
  );
}

check("who says so: from a factor to its source in two taps", () =>
  onPage(phone, async (page, site) => {
    const { sizing } = await sized(page, site.url);
    const { criterion } = await places(page, sizing);
    await goTo(page, at("form", sizing, `/now/criteria/${criterion}`));
    const hand = new Hand(page);
    await hand.tap(".field .hint a", "conventional factor");
    await page.getByText("seen in a published document").first().waitFor();
    hand.rests("who says 2.0", 2);
  }),
);
