// The verbs that need the core. Each takes its message and returns the reply;
// they run one at a time, in the order the messages came.
import type { JournalRow, Reply, ToWorker } from "../protocol.ts";
import { uuids } from "../ids.ts";
import type { Ledger, Saved } from "./ledger.ts";
import { aRecord, aRequest, aWholeRequest, openRequest, type Session } from "./session.ts";
import type { Snapshots } from "./snapshots.ts";
import { refusal } from "./refusal.ts";

export interface Desk {
  ledger: Ledger;
  session: Session;
  snapshots: Snapshots;
}

type Message<V extends ToWorker["verb"]> = Extract<ToWorker, { verb: V }>;

/** An entry that is written down and waits for its turn in the core. */
export interface Written {
  record: JournalRow;
  saved: Saved;
}

/** First half of `enter`, at once when the message comes: the journal does not wait for the core. */
export function writeDown({ ledger, session }: Desk, m: Message<"enter">): Written | Reply {
  if (ledger.readOnly) {
    return refusal(m.n, "read-only", "Another tab is editing. This one shows and does not change anything.");
  }
  const doc = ledger.doc(m.doc);
  if (!doc) {
    const words = session.held(m.doc) ? "Keep this job on the device first." : "There is no such job on this device.";
    return refusal(m.n, "no-document", words);
  }
  if (doc.tries >= 2) return refusal(m.n, "broken", doc.broken ?? "This job cannot be opened.");
  const before = ledger.byToken(m.doc, m.token);
  if (before && "why" in before) return asideRefusal(m.n, before.why);
  // Sent again after a restart: it is written down already.
  if (before) return { record: before, saved: Promise.resolve(doc.savedAt) };
  return ledger.append(doc, {
    request: m.request,
    token: m.token,
    fold: m.fold ?? null,
    bytes: m.bytes ?? null,
  });
}

/** Second half of `enter`, in turn: the core is called once the entry is durable. */
export async function enter(desk: Desk, m: Message<"enter">, { record, saved }: Written): Promise<Reply> {
  const { ledger, session, snapshots } = desk;
  const savedAt = await saved;
  const stamp = savedAt === null ? {} : { savedAt };
  const text = await session.withOpen(m.doc, (core, open) => {
    const current = ledger.records(m.doc).find((row) => row.seq === record.seq);
    // A replay in between has entered it already, or a snapshot contains it;
    // only the view is missing.
    if (!current || open.applied.has(record) || open.applied.has(current)) {
      return open.replayed.get(record.seq) ?? '{"ok":true}';
    }
    const request = m.show === undefined ? record.request : `${record.request.slice(0, -1)},"show":${m.show}}`;
    const answer = session.call(core, aRecord(m.doc, record.seq, record.bytes), request, record.bytes);
    open.applied.add(record);
    open.replayed.delete(record.seq);
    return answer.text;
  }, record.seq);
  const aside = ledger.asides().find((row) => row.doc === m.doc && row.seq === record.seq);
  if (aside) return asideRefusal(m.n, aside.why);
  snapshots.due(m.doc);
  return { n: m.n, text, ...stamp };
}

function asideRefusal(n: number, why: string): Reply {
  return refusal(n, "set-aside", `The calculation failed twice on this entry, so it was set aside: ${why}`);
}

export async function show({ session }: Desk, m: Message<"show">): Promise<Reply> {
  if (m.table !== undefined && m.bytes) session.table = { name: m.table, bytes: m.bytes };
  const table = m.table === undefined ? null : session.table;
  if (m.table !== table?.name) return refusal(m.n, "no-table", "The table is not here any more.");
  const calling = m.whole ? aWholeRequest(m.n) : aRequest(m.n);
  const answer = await session.withOpen(m.doc, (core) => session.call(core, calling, m.request, table?.bytes));
  return { n: m.n, ...answer };
}

export async function save({ ledger, session }: Desk, m: Message<"save">): Promise<Reply> {
  const seq = ledger.doc(m.doc)?.lastSeq ?? 0;
  ledger.seal(m.doc);
  const answer = await session.withOpen(m.doc, (core) => session.call(core, aWholeRequest(m.n), m.request));
  return { n: m.n, ...answer, seq };
}

export async function open(desk: Desk, m: Message<"open">): Promise<Reply> {
  const { ledger, session } = desk;
  if (m.as !== "file" && (ledger.doc(m.doc) || session.held(m.doc))) {
    const { open } = await session.ensureOpen(m.doc);
    return { n: m.n, text: open.answer };
  }
  if (m.as === "stored") return refusal(m.n, "no-document", "There is no such job on this device.");
  const answer = await session.openNew(m.doc, m.request, m.bytes, m.n);
  if (answer.text.startsWith('{"ok":false')) return { n: m.n, text: answer.text };
  const { job, title } = JSON.parse(answer.text) as { job?: string; title?: string };
  let row = { doc: m.doc, bytes: m.bytes ?? new Uint8Array(), open: m.request };
  if (m.as === "new") {
    // A document that was just made has no bytes yet; the core writes them.
    const request = JSON.stringify({ verb: "save", doc: m.doc, for: "device", ids: uuids(2) });
    const saved = await session.withOpen(m.doc, (core) => session.call(core, aWholeRequest(m.n), request));
    row = { doc: m.doc, bytes: saved.bytes ?? new Uint8Array(), open: openRequest(m.doc) };
  }
  const known = ledger.holding(job ?? m.doc);
  if (ledger.readOnly || (m.as === "file" && known.length > 0)) {
    session.hold(row);
    return { n: m.n, text: answer.text, ...(known.length > 0 ? { known } : {}) };
  }
  const savedAt = await ledger.create(m.doc, job ?? m.doc, title ?? "", row, m.as === "file");
  return { n: m.n, text: answer.text, ...(savedAt === null ? {} : { savedAt }) };
}

/** Stores an opened file whose job is on this device already, as a copy of its own. */
export async function keep({ ledger, session }: Desk, m: Message<"keep">): Promise<Reply> {
  const row = session.held(m.doc);
  if (ledger.readOnly) return refusal(m.n, "read-only", "Another tab is editing.");
  if (!row) return refusal(m.n, "no-document", "There is no opened file of this name.");
  const { open } = await session.ensureOpen(m.doc);
  const { job, title } = JSON.parse(open.answer) as { job?: string; title?: string };
  session.release(m.doc);
  const savedAt = await ledger.create(m.doc, job ?? m.doc, title ?? "", row, true);
  return { n: m.n, text: '{"ok":true}', ...(savedAt === null ? {} : { savedAt }) };
}

/** Drops a document from the core's memory; what is stored stays stored. */
export async function close({ session, snapshots }: Desk, m: Message<"close">): Promise<Reply> {
  await snapshots.take(m.doc);
  if (session.isOpen(m.doc)) {
    const core = await session.life.core();
    if (session.isOpen(m.doc)) session.call(core, aRequest(m.n), m.request);
  }
  session.closed(m.doc);
  return { n: m.n, text: '{"ok":true}' };
}
