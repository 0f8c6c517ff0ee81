// Every word of the page is in the core's catalogue: a key without words would
// be shown as it is.
import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { check } from "./check.ts";
import { www } from "./site.ts";

check("every label of the screens has words", async () => {
  const read = (name: string) => JSON.parse(readFileSync(join(www, "src", "gen", name), "utf8")) as Record<string, string>;
  const words = { ...read("labels.json"), ...read("late.json") };
  const folder = join(www, "src", "screens");
  const keys = new Set<string>();
  for (const name of readdirSync(folder)) {
    const text = readFileSync(join(folder, name), "utf8");
    // Keys stand as plain texts of the form "part.part" with a known first part.
    for (const [, key = ""] of text.matchAll(/"((?:aside|band|bring|card|choices|compare|convert|core|example|field|fleet|form|handout|history|incoming|job|jobs|joined|keep|limit|more|nav|paste|pick|pile|piles|print|reading|readonly|row|send|settings|sizing|status|thing|trial|update|waiver|working)\.[a-z.]+)"/g)) keys.add(key);
    for (const [, key = ""] of text.matchAll(/\b(?:label|word)\("([a-z.]+)"/g)) keys.add(key);
    for (const [, start = ""] of text.matchAll(/\blabelList\("([a-z]+)"\)/g)) keys.add(`${start}.1`);
  }
  assert.ok(keys.size > 80, `${keys.size} keys were found`);
  assert.deepEqual([...keys].filter((key) => !words[key]).sort(), []);
});
