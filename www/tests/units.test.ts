// Parts that need no browser.
import assert from "node:assert/strict";
import { uuids, uuidv7 } from "../src/ids.ts";
import { clock } from "../src/status.ts";
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
  const bytes = new Uint8Array([0, 255, 10]);
  const withBytes = JSON.parse(decode(withPending(encode("{}"), [record(1, `{"do":"join"}`, bytes)]))) as {
    pending: { do: string; bytes64: string }[];
  };
  assert.deepEqual([...Buffer.from(withBytes.pending[0]!.bytes64, "base64")], [...bytes]);
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
