// How the tests reach every screen: one entry for each, with the example job
// on the device and a sizing made from it that has a set reading.
import assert from "node:assert/strict";
import type { Page } from "playwright-core";
import type { ScreenName } from "../src/screens/list.ts";
import { twoCopies } from "./history-copies.ts";
import { visit } from "./page.ts";
import { onSite, type Site } from "./site.ts";

export const sizes = [
  { width: 390, height: 664 },
  { width: 360, height: 640 },
  { width: 1280, height: 800 },
] as const;

/** What a made-ready page holds. */
export interface Places {
  job: string;
  pile: string;
  /** A pile of the example with an open window, and one without. */
  closed: string;
  rig: string;
  circuit: string;
  gauge: string;
  /** The example's certificate. */
  certificate: string;
  type: string;
  criterion: string;
  sizing: string;
  step: string;
  /** A job put together from two copies, with open choices, and a path in it that has a history. */
  joined: string;
  stated: string;
}

/** Screens by name: their addresses, and how many numbers needed at the rig each shows at least. */
export const entries: Record<ScreenName, { hash: (p: Places) => string[]; numbers: number }> = {
  "": { hash: () => [""], numbers: 5 },
  size: { hash: (p) => [at("size", p.job, p.pile)], numbers: 5 },
  "pick-rig": { hash: (p) => [at("pick-rig", p.sizing)], numbers: 0 },
  "pick-pile": { hash: (p) => [at("pick-pile", p.sizing)], numbers: 0 },
  limits: { hash: (p) => [at("limits", p.sizing)], numbers: 8 },
  form: {
    hash: (p) =>
      [`/now/rigs/${p.rig}`, `/now/rigs/${p.rig}/circuits/${p.circuit}`, `/now/gauges/${p.gauge}`, `/now/certificates/${p.certificate}`, `/now/pileTypes/${p.type}`, `/now/piles/${p.pile}`, `/now/criteria/${p.criterion}`, "/now/stock", "/now/strata", "/now"].map(
        (path) => at("form", p.job, path),
      ),
    numbers: 0,
  },
  piles: { hash: (p) => [at("piles", p.job)], numbers: 6 },
  bring: { hash: (p) => [at("bring", p.job)], numbers: 0 },
  "bring-rows": { hash: (p) => [at("bring-rows", p.job)], numbers: 0 },
  "bring-columns": { hash: (p) => [at("bring-columns", p.job)], numbers: 0 },
  sheet: {
    hash: (p) => [
      ...["cutting", "order", "lengths", "criteria"].map((name) => at("sheet", p.job, name)),
      at("sheet", p.job, "doubt", "0", p.pile),
      at("sheet", p.job, "certificate", "0", p.certificate),
      at("sheet", p.job, "gauge", "0", p.gauge),
    ],
    numbers: 0,
  },
  "hand-out": { hash: (p) => [at("hand-out", p.job)], numbers: 0 },
  pile: { hash: (p) => [at("pile", p.job, p.pile)], numbers: 10 },
  working: { hash: (p) => [at("working", p.job, p.step, p.pile), at("working", p.job, `/now/piles/${p.pile}/workingLoad`)], numbers: 0 },
  plan: { hash: (p) => [at("plan", p.job), at("plan", p.sizing)], numbers: 0 },
  fleet: { hash: (p) => [at("fleet", p.job)], numbers: 0 },
  convert: { hash: (p) => [at("convert", p.job, p.pile), at("convert", p.sizing)], numbers: 0 },
  card: { hash: (p) => [at("card", p.job, p.pile), at("card", p.job, p.closed)], numbers: 0 },
  more: { hash: () => [at("more")], numbers: 0 },
  jobs: { hash: () => [at("jobs")], numbers: 0 },
  job: { hash: (p) => [at("job", p.job), at("job", p.sizing), at("job", p.joined)], numbers: 0 },
  incoming: { hash: () => [at("incoming")], numbers: 0 },
  joined: { hash: (p) => [at("joined", p.joined)], numbers: 0 },
  choices: { hash: (p) => [at("choices", p.joined), at("choices", p.job)], numbers: 0 },
  history: { hash: (p) => [at("history", p.joined, p.stated), at("history", p.joined, "/now"), at("history", p.job, "/now", "1")], numbers: 0 },
  compare: { hash: (p) => [at("compare", p.joined), at("compare", p.job)], numbers: 0 },
  paste: { hash: () => [at("paste")], numbers: 0 },
  keep: { hash: (p) => [at("keep", p.sizing)], numbers: 0 },
  aside: { hash: () => [at("aside")], numbers: 0 },
  settings: { hash: () => [at("settings")], numbers: 0 },
  about: { hash: () => [at("about")], numbers: 0 },
};

/** Elements that carry a number needed at the rig. */
export const rigNumbers = ".set .v, .atset .v, .stop .v, .pile-set .v, .line-value .v, .figures .v, .limit-use .v, .row.typed .box, .group-says";

export function at(...parts: string[]): string {
  return "#/" + parts.map(encodeURIComponent).join("/");
}

export async function goTo(page: Page, hash: string): Promise<void> {
  await page.evaluate((hash) => (location.hash = hash), hash);
  await rest(page);
}

/** Waits until nothing is under way: each answer comes in the order asked. */
export async function rest(page: Page): Promise<void> {
  for (let i = 0; i < 3; i++) {
    await page.evaluate(async () => {
      await gaugewright.host.show("sizing", "info");
      await new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)));
    });
  }
}

/** Taps the example job on the first screen of a cold device and waits for its piles. */
export async function openExample(page: Page): Promise<string> {
  await page.locator('header a[href="#/example"]').click();
  await page.waitForURL(/#\/piles\//);
  await page.locator(".pile-table tbody tr").first().waitFor();
  return decodeURIComponent(new URL(page.url()).hash.split("/")[2] ?? "");
}

type Kept = { rigs: { id: string; name: string; circuits: { id: string }[] }[]; types: { id: string; name: string }[] };

/** As `sized`, with a second job whose copies disagree about a load. */
export async function ready(page: Page, url: string): Promise<Places> {
  const made = await sized(page, url);
  const { doc, theirs, load } = await twoCopies(page);
  await page.evaluate(async ([doc, theirs]) => gaugewright.host.enter(doc, { do: "join" }, { bytes: new TextEncoder().encode(theirs) }), [doc, theirs] as const);
  return { ...made, joined: doc, stated: load };
}

/** Loads the page at `url`, opens the example, and makes a sizing from its things: 900 kN, factor 2.0. */
export async function sized(page: Page, url: string): Promise<Omit<Places, "joined" | "stated">> {
  await visit(page, url);
  const job = await openExample(page);
  await goTo(page, "#/");
  const made = await page.evaluate(async (job) => {
    const { host } = gaugewright;
    const kept = (await host.show(job, "kept")) as unknown as Kept;
    const piles = (await host.show(job, "piles", { from: 0, count: 50 })) as unknown as { rows: { id: string; state: string; set: { open: string } | null }[] };
    const open = piles.rows.find((row) => row.state === "open");
    const closed = piles.rows.find((row) => row.state === "closed");
    const rig = kept.rigs.find((one) => one.name === "Press 240");
    const type = kept.types.find((one) => one.name === "SQ 300");
    if (!open?.set || !closed || !rig || !type) throw new Error("the example job has changed");
    const { criterion } = (await host.show(job, "sizing", { pile: open.id })) as unknown as { criterion: string };
    return { job, criterion, pile: open.id, closed: closed.id, step: open.set.open, rig: rig.id, circuit: rig.circuits[0]?.id ?? "", type: type.id };
  }, job);
  const rig = await page.evaluate(async (p) => {
    const form = (await gaugewright.host.show(p.job, "form", { path: `/now/rigs/${p.rig}/circuits/${p.circuit}` })) as unknown as {
      sections: { links: { path: string }[] }[];
    };
    const path = form.sections.flatMap((section) => section.links).find((link) => link.path.startsWith("/now/gauges/"))?.path ?? "";
    return path.split("/").pop() ?? "";
  }, made);
  await typeInto(page, "#row-load", "900");
  await typeInto(page, "#row-factor", "2.0");
  await page.locator('a.row[href^="#/pick-rig"]').click();
  await page.locator(".thing", { hasText: "Press 240" }).locator(".pick").first().click();
  await page.locator('a.row[href^="#/pick-pile"]').click();
  await page.locator(".pick", { hasText: "SQ 300" }).click();
  await page.locator(".set .v").waitFor();
  assert.equal(await page.locator("#row-load").inputValue(), "900");
  return { ...made, gauge: rig, certificate: "0193b000-0000-7000-8000-0000000002c1", sizing: "sizing" };
}

export async function typeInto(page: Page, selector: string, text: string): Promise<void> {
  await page.locator(selector).click();
  await page.keyboard.type(text);
  await rest(page);
}

/** Runs `work` on a page of the product in a fresh browser; everything is closed afterwards, come what may. */
export function onPage(size: { width: number; height: number }, work: (page: Page, site: Site) => Promise<void>): Promise<void> {
  return onSite("build", async (context, site) => {
    context.setDefaultTimeout(30_000);
    const page = await context.newPage();
    await page.setViewportSize(size);
    await work(page, site);
  });
}
