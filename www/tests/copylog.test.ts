// The second copy of the device's storage: what is read after a file was cut
// off anywhere, and a database that the browser has dropped.
import assert from "node:assert/strict";
import { existsSync, readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import type { Op, Row } from "../src/protocol.ts";
import { keyOf } from "../src/protocol.ts";
import { CopyLog, type LogFile } from "../src/worker/copylog.ts";
import { DoomedBrowser, freshProfile } from "./browser.ts";
import { check } from "./check.ts";
import { openNew, type, values, visit } from "./page.ts";
import { Site } from "./site.ts";

class FakeFile implements LogFile {
  constructor(public bytes = new Uint8Array()) {}

  read(into: Uint8Array, { at }: { at: number }): number {
    const part = this.bytes.subarray(at, at + into.length);
    into.set(part);
    return part.length;
  }

  write(bytes: Uint8Array, { at }: { at: number }): number {
    const before = this.bytes;
    this.bytes = new Uint8Array(Math.max(before.length, at + bytes.length));
    this.bytes.set(before);
    this.bytes.set(bytes, at);
    return bytes.length;
  }

  getSize(): number {
    return this.bytes.length;
  }

  truncate(size: number): void {
    this.bytes = this.bytes.slice(0, size);
  }

  flush(): void {}
}

/** Random numbers that are the same in every run. */
function numbers(seed: number): (below: number) => number {
  return (below) => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return Math.floor((seed / 2 ** 32) * below);
  };
}

function someOps(pick: (below: number) => number): Op[] {
  return Array.from({ length: 1 + pick(3) }, (): Op => {
    const doc = `d${pick(3)}`;
    const seq = pick(4);
    switch (pick(4)) {
      case 0:
        return { op: "put", store: "bytes", row: { doc, bytes: Uint8Array.from({ length: pick(40) }, () => pick(256)), open: "{}" } };
      case 1:
        return { op: "delete", store: "journal", key: [doc, seq] };
      case 2:
        return { op: "put", store: "meta", row: { name: "device", device: `${pick(9)}`, who: "ä" } };
      default:
        return { op: "put", store: "journal", row: { doc, seq, request: `${pick(99)}`, token: "t", fold: null, bytes: pick(2) ? null : Uint8Array.of(1, 2), tries: 0, at: "" } };
    }
  });
}

function after(commits: Op[][]): string[] {
  const rows = new Map<string, Row>();
  for (const op of commits.flat()) {
    const key = JSON.stringify([op.store, op.op === "put" ? keyOf(op.store, op.row) : op.key]);
    if (op.op === "put") rows.set(key, { store: op.store, row: op.row } as Row);
    else rows.delete(key);
  }
  return texts([...rows.values()]);
}

function texts(rows: Row[]): string[] {
  return rows.map(({ store, row }) => JSON.stringify([store, Object.entries(row).sort()])).sort();
}

check("a copy that was cut off at any byte holds a whole number of commits, and goes on from there", async () => {
  const pick = numbers(7);
  const commits = Array.from({ length: 12 }, () => someOps(pick));
  const files = [new FakeFile(), new FakeFile()] as const;
  const log = new CopyLog(files);
  const sizes = commits.map((ops) => {
    log.append(ops);
    return Math.max(...files.map((file) => file.bytes.length));
  });
  const written = files.find((file) => file.bytes.length > 0)!.bytes;
  assert.equal(written.length, sizes.at(-1));
  for (let cut = 0; cut <= written.length; cut++) {
    const whole = sizes.filter((size) => size <= cut).length;
    // The torn record may also have been filled with anything.
    for (const tail of [new Uint8Array(), new Uint8Array(30), new Uint8Array(30).fill(255)]) {
      const pair = [new FakeFile(Uint8Array.from([...written.subarray(0, cut), ...tail])), new FakeFile()] as const;
      const again = new CopyLog(pair);
      if (cut >= sizes[0]!) assert.deepEqual(texts(again.rows()), after(commits.slice(0, whole)), `cut at ${cut}`);
      again.append(commits[0]!);
      const third = new CopyLog(pair);
      assert.deepEqual(texts(third.rows()), texts(again.rows()), `written on after a cut at ${cut}`);
    }
  }
});

check("a copy begun anew is whole before the one before is given up, and a forgotten job is in neither", async () => {
  const pick = numbers(11);
  const files = [new FakeFile(), new FakeFile()] as const;
  let log = new CopyLog(files);
  const commits = Array.from({ length: 5 }, () => someOps(pick));
  for (const ops of commits) log.append(ops);
  const before = [files[0].bytes.slice(), files[1].bytes.slice()] as const;
  log.replace(log.rows());
  assert.deepEqual(texts(log.rows()), after(commits));
  const now = files.map((file) => file.bytes.slice());
  // A cut at any moment of the change: the new file in part, the old one still there.
  const changed = now.findIndex((bytes) => bytes.length > 0);
  for (let cut = 0; cut <= now[changed]!.length; cut++) {
    const pair = before.map((bytes, which) => new FakeFile(which === changed ? now[changed]!.slice(0, cut) : bytes.slice()));
    log = new CopyLog([pair[0]!, pair[1]!]);
    assert.deepEqual(texts(log.rows()), after(commits), `cut at ${cut}`);
  }
  log = new CopyLog(files);
  log.append([{ op: "put", store: "bytes", row: { doc: "secret", bytes: new TextEncoder().encode("of nobody's business"), open: "{}" } }]);
  const holds = () => files.some((file) => Buffer.from(file.bytes).includes("business"));
  assert.equal(holds(), true);
  log.append([{ op: "delete", store: "docs", key: "secret" }, { op: "delete", store: "bytes", key: "secret" }]);
  assert.equal(holds(), false);
});

check("a database the browser has dropped is brought back from the second copy, and the page says so", async () => {
  const site = await Site.open("plain");
  const profile = freshProfile();
  let browser: DoomedBrowser | null = null;
  const page = async () => visit(await (browser = await DoomedBrowser.launch(profile.folder)).page(), site.url);
  const database = () => join(profile.folder, "Default", "IndexedDB");
  try {
    const first = await page();
    await openNew(first, "sizing");
    assert.ok((await type(first, "sizing", "a", "1")).savedAt);
    await first.evaluate(() => gaugewright.host.flush());
    assert.ok((await type(first, "sizing", "b", "2")).savedAt);
    assert.equal(await first.evaluate(() => gaugewright.signals.restored.value), false);
    await browser!.kill();
    // What a browser does with a database whose log was torn.
    assert.ok(existsSync(database()) && readdirSync(database()).length > 0);
    rmSync(database(), { recursive: true });
    const second = await page();
    assert.equal(await second.evaluate(() => gaugewright.signals.restored.value), true);
    await openNew(second, "sizing");
    assert.deepEqual(await values(second, "sizing"), { a: "1", b: "2" });
    await browser!.kill();
    // A copy that is gone is begun anew; it then holds the rest of the work, too.
    rmSync(join(profile.folder, "Default", "File System"), { recursive: true });
    const third = await page();
    await openNew(third, "sizing");
    assert.ok((await type(third, "sizing", "c", "3")).savedAt);
    await browser!.kill();
    rmSync(database(), { recursive: true });
    const fourth = await page();
    await openNew(fourth, "sizing");
    assert.deepEqual(await values(fourth, "sizing"), { a: "1", b: "2", c: "3" });
  } finally {
    await (browser as DoomedBrowser | null)?.kill();
    profile.drop();
    await site.close();
  }
});
