// Two copies of one job that went different ways, as the tests need them.
import type { Page } from "playwright-core";
import { uuidv7 } from "../src/ids.ts";

export interface Copies {
  /** The document that stays on the device. */
  doc: string;
  /** The file of the other copy. */
  theirs: string;
  pile: string;
  /** Where both state a working load: 950 kN here, 800 kN there. */
  load: string;
}

/** A new job on this device, changed here by Ada and in its other copy by `other`. */
export function twoCopies(page: Page, other = "Ben"): Promise<Copies> {
  return page.evaluate(async ([other, doc]) => {
    const { host } = gaugewright;
    const bytesOf = async (doc: string) => (await host.save(doc)).bytes ?? new Uint8Array();
    const type = (doc: string, path: string, typed: string) => host.enter(doc, { do: "type", path, typed });
    await host.open(doc, "new");
    await host.setWho("Ada");
    await host.enter(doc, { do: "title", title: "North pier" });
    const piles = (await host.show(doc, "piles", { from: 0, count: 1 })) as unknown as { rows: { id: string }[] };
    const pile = piles.rows[0]?.id ?? "";
    const load = `/now/piles/${pile}/workingLoad`;
    await type(doc, load, "900");
    const copy = await host.openFile(await bytesOf(doc));
    await host.keep(copy.doc);
    await type(doc, load, "950");
    await type(doc, `/now/piles/${pile}/cutoff`, "11.20");
    await host.setWho(other);
    await type(copy.doc, load, "800");
    await type(copy.doc, `/now/piles/${pile}/platform`, "12.60");
    const theirs = new TextDecoder().decode(await bytesOf(copy.doc));
    await host.forget(copy.doc);
    await host.setWho("Ada");
    return { doc, theirs, pile, load };
  }, [other, uuidv7()] as const);
}
