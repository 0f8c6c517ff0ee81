// A job of many piles, made from the first example job by repeating its piles.
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";

export function bigJob(folder, piles) {
  const name = readdirSync(folder).filter((n) => n.endsWith(".json")).sort()[0];
  const job = JSON.parse(readFileSync(join(folder, name), "utf8"));
  const models = Object.values(job.now.piles);
  job.job = id(0);
  job.now.piles = {};
  for (let k = 0; k < piles; k++) job.now.piles[id(k + 1)] = { ...models[k % models.length], mark: `P${k + 1}` };
  delete job.records;
  job.sittings = {};
  return { text: JSON.stringify(job), firstPile: id(1) };
}

function id(k) {
  return `0193c000-0000-7000-8000-${String(k).padStart(12, "0")}`;
}
