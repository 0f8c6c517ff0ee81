// Parts that need no browser.
import assert from "node:assert/strict";
import { uuids, uuidv7 } from "../src/ids.ts";
import { clock } from "../src/screens/clock.ts";
import { Commits } from "../src/worker/commits.ts";
import { Ledger } from "../src/worker/ledger.ts";
import { MemoryStore } from "../src/worker/memorystore.ts";
import { withPending } from "../src/worker/raw.ts";
import type { JournalRow } from "../src/protocol.ts";
import { check } from "./check.ts";

function record(seq: number, request: string, bytes: Uint8Array | null = null): JournalRow {
  return { doc: "d", seq, request, token: "", fold: null, bytes, tries: 0, at: "" };
}

const encode = (text: string) => new TextEncoder().encode(text);
const decode = (bytes: Uint8Array | null) => new TextDecoder().decode(bytes ?? new Uint8Array());

check("pending entries are added as the last member, every other byte stays", async () => {
  const cases = [
    [`{"a":1}`, { a: 1 }],
    [`{\n "a": {"b": "}"}\n}\n`, { a: { b: "}" } }],
    [`{}`, {}],
    [`{ \n }`, {}],
    [`{"text":"Ø 300 mm, \\"quoted\\"","list":[]}`, { text: 'Ø 300 mm, "quoted"', list: [] }],
  ] as const;
  const records = [record(1, `{"do":"type","text":"1"}`), record(2, `{"do":"type","text":"2"}`)];
  for (const [text, value] of cases) {
    const out = decode(withPending(encode(text), records));
    assert.deepEqual(JSON.parse(out), {
      ...value,
      pending: [
        { do: "type", text: "1" },
        { do: "type", text: "2" },
      ],
    });
    assert.ok(out.startsWith(text.slice(0, text.lastIndexOf("}"))));
  }
  assert.equal(decode(withPending(encode(`{"a":1}`), [])), `{"a":1}`);
  assert.equal(withPending(encode("no object"), records), null);
  const copy = `{"title":"a \\"quay\\" – wall"}\n`;
  const withBytes = JSON.parse(decode(withPending(encode("{}"), [record(1, `{"do":"join"}`, encode(copy))]))) as {
    pending: { do: string; text: string }[];
  };
  assert.equal(withBytes.pending[0]?.text, copy);
});

// RFC 9562, appendix A.6: the example UUIDv7 017F22E2-79B0-7CC3-98C4-DC0C0C07398F
// belongs to 22 February 2022 19:22:22.000 UTC.
check("ids carry the time as RFC 9562 section 5.7 lays it out", async () => {
  const id = uuidv7(Date.UTC(2022, 1, 22, 19, 22, 22));
  assert.match(id, /^017f22e2-79b0-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  assert.equal(new Set(uuids(1000)).size, 1000);
});

check("the clock shows the date only when it is not today's", async () => {
  const now = new Date(2026, 10, 24, 15, 0);
  assert.equal(clock(new Date(2026, 10, 24, 9, 5).toISOString(), now), "09:05");
  assert.equal(clock(new Date(2026, 10, 23, 9, 5).toISOString(), now), "2026-11-23 09:05");
});

check("neighbouring key presses share a record; another path, another sitting or a saved file ends that", async () => {
  const store = new MemoryStore([], () => {});
  const ledger = new Ledger(store, new Commits(store, "a test", () => {}, () => {}), false, () => {});
  await ledger.load();
  await ledger.create("d", "j", "", { doc: "d", bytes: encode("{}"), open: "{}" }, false);
  const press = async (request: string, fold: string | null) => {
    await ledger.append(ledger.doc("d")!, { request, token: request, fold, bytes: null }).saved;
    return ledger.records("d").map((row) => row.request);
  };
  assert.deepEqual(await press("1", "s1 a"), ["1"]);
  assert.deepEqual(await press("12", "s1 a"), ["12"]);
  assert.deepEqual(await press("7", "s1 b"), ["12", "7"]);
  assert.deepEqual(await press("123", "s1 a"), ["12", "7", "123"]);
  assert.deepEqual(await press("take", null), ["12", "7", "123", "take"]);
  assert.deepEqual(await press("take", null), ["12", "7", "123", "take", "take"]);
  assert.deepEqual(await press("x", "s1 a"), ["12", "7", "123", "take", "take", "x"]);
  ledger.seal("d");
  assert.deepEqual(await press("xy", "s1 a"), ["12", "7", "123", "take", "take", "x", "xy"]);
  assert.deepEqual(await press("xyz", "s1 a"), ["12", "7", "123", "take", "take", "x", "xyz"]);
  const stored = (await store.contents()).journal.sort((a, b) => a.seq - b.seq).map((row) => row.request);
  assert.deepEqual(stored, ["12", "7", "123", "take", "take", "x", "xyz"]);
  assert.equal(ledger.doc("d")?.changesSinceFile, 7);
});

check("a snapshot takes exactly the records it contains out of the journal", async () => {
  const store = new MemoryStore([], () => {});
  const ledger = new Ledger(store, new Commits(store, "a test", () => {}, () => {}), false, () => {});
  await ledger.load();
  await ledger.create("d", "j", "", { doc: "d", bytes: encode("{}"), open: "{}" }, false);
  const press = (request: string, fold: string) =>
    ledger.append(ledger.doc("d")!, { request, token: request, fold, bytes: null }).record;
  const first = press("1", "a");
  const second = press("2", "b");
  // A key press that folds into the second record after the core has seen it.
  press("22", "b");
  await ledger.snapshot("d", { doc: "d", bytes: encode(`{"now":2}`), open: "{}" }, [first, second], "T");
  assert.deepEqual((await store.contents()).journal.map((row) => row.request), ["22"]);
  assert.equal(ledger.doc("d")?.upTo, 1);
  assert.equal(ledger.doc("d")?.title, "T");
  // A snapshot that comes while the stored bytes are read: bytes and records still belong together.
  const reading = ledger.stored("d");
  await ledger.snapshot("d", { doc: "d", bytes: encode(`{"now":22}`), open: "{}" }, ledger.records("d"), "T");
  const stored = await reading;
  assert.deepEqual([new TextDecoder().decode(stored?.row.bytes), stored?.records.length], [`{"now":22}`, 0]);
});
