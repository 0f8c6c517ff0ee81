// What was called saved is there after the browser was killed. A polite close
// would prove nothing, so the whole process group gets SIGKILL at a random
// moment while entries pour in.
import assert from "node:assert/strict";
import { check } from "./check.ts";
import { DoomedBrowser, freshProfile } from "./browser.ts";
import { openNew, rawText, values, visit } from "./page.ts";
import { Site } from "./site.ts";

const trials = 20;

check("entries called saved survive SIGKILL", async () => {
  const site = await Site.open("plain");
  const profile = freshProfile();
  let browser: DoomedBrowser | null = null;
  try {
    // What each path must at least hold; the number in the text only grows.
    const promised = new Map<string, number>();
    let entries = 0;
    for (let trial = 0; trial <= trials; trial++) {
      browser = await DoomedBrowser.launch(profile.folder);
      const page = await visit(await browser.page(), site.url);
      await openNew(page, "sizing");
      const found = await values(page, "sizing");
      for (const [path, least] of promised) {
        assert.ok(Number(found[path] ?? -1) >= least, `trial ${trial}: ${path} holds ${found[path]}, saved was ${least}`);
      }
      if (trial === trials) break;
      const raw = await rawText(page, "sizing");
      for (const path of promised.keys()) assert.ok(raw.includes(`"${path}"`), `trial ${trial}: ${path} is in the file`);
      page.on("console", (message) => {
        const [word, path, number] = message.text().split(" ");
        if (word !== "saved" || !path) return;
        promised.set(path, Math.max(promised.get(path) ?? -1, Number(number)));
        entries++;
      });
      // Half the entries are key presses on one path, which fold into one record.
      await page.evaluate((trial) => {
        void (async () => {
          for (let k = 0; ; k++) {
            const path = k % 8 < 4 ? `trial${trial}/same` : `trial${trial}/${k}`;
            const { savedAt } = await gaugewright.host.enter("sizing", { do: "type", path, text: String(k) });
            if (savedAt !== undefined) console.log(`saved ${path} ${k}`);
          }
        })();
      }, trial);
      await new Promise((later) => setTimeout(later, 150 + Math.random() * 1500));
      await browser.kill();
      browser = null;
    }
    assert.ok(entries > trials * 5, `only ${entries} entries were made in ${trials} trials`);
  } finally {
    await browser?.kill();
    profile.drop();
    await site.close();
  }
}, 300_000);
