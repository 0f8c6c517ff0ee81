// A job's file without the core: the stored bytes, with the entries that are
// not in them yet added as a last member "pending". The core takes them in
// when it opens the file. The text is spliced, not parsed: what is stored may
// be larger or stranger than this code should judge.
import type { JournalRow } from "../protocol.ts";

const closing = 0x7d; // }
const opening = 0x7b; // {

/** The bytes to save, or null when the stored text is no JSON object at all. */
export function withPending(bytes: Uint8Array, records: JournalRow[]): Uint8Array | null {
  if (records.length === 0) return bytes;
  const end = bytes.lastIndexOf(closing);
  if (end < 0) return null;
  let before = end - 1;
  while (before >= 0 && bytes[before]! <= 0x20) before--;
  const empty = before >= 0 && bytes[before] === opening;
  const entries = records.map((record) => withBytes(record)).join(",\n");
  const member = new TextEncoder().encode(`${empty ? "" : ","}\n"pending": [\n${entries}\n]\n`);
  const out = new Uint8Array(bytes.length + member.length);
  out.set(bytes.subarray(0, end));
  out.set(member, end);
  out.set(bytes.subarray(end), end + member.length);
  return out;
}

/** A request as text. What came with it is a job file, so it travels as text too. */
function withBytes({ request, bytes }: JournalRow): string {
  if (!bytes) return request;
  return `${request.slice(0, -1)},"text":${JSON.stringify(new TextDecoder().decode(bytes))}}`;
}
