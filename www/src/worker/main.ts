// The worker: owns storage, the journal and the core. It answers every message
// of the page with exactly one reply.
import type { Event, Reply, Row, ToWorker } from "../protocol.ts";
import { CoreDied, figures } from "./core.ts";
import { loadCore } from "../loadcore.ts";
import { Commits } from "./commits.ts";
import { DeviceStore, mayPass } from "./devicestore.ts";
import { Ledger } from "./ledger.ts";
import { Life, Unavailable } from "./life.ts";
import { MemoryStore } from "./memorystore.ts";
import { withPending } from "./raw.ts";
import { refusal } from "./refusal.ts";
import { Broken, NoDocument, Session } from "./session.ts";
import { Snapshots } from "./snapshots.ts";
import { Conflict, type Store } from "./store.ts";
import { TwiceStore } from "./twicestore.ts";
import { close, enter, keep, open, save, show, writeDown, type Desk } from "./verbs.ts";

type Start = Extract<ToWorker, { verb: "start" }>;
type Asked = Exclude<ToWorker, { verb: "start" | "module" }>;

Object.assign(globalThis, { figures });

function tell(event: Event): void {
  postMessage(event);
}

/** Everything that is made at the start, or null before it. */
let desk: (Desk & { life: Life }) | null = null;
let chain: Promise<unknown> = Promise.resolve();
let started: Promise<void> = Promise.resolve();
/** The core as the page compiled it, while this worker was coming up. */
let handed: (module: WebAssembly.Module | null) => void = () => {};
let fromPage: Promise<WebAssembly.Module | null> | null = new Promise((resolve) => (handed = resolve));

async function load(): Promise<WebAssembly.Module> {
  const module = await fromPage;
  // A core that did not start is fetched anew.
  fromPage = null;
  return module ?? loadCore(self.location.href);
}

/** One thing at a time in the core, in the order asked. */
function inTurn<T>(work: () => Promise<T>): Promise<T> {
  const result = chain.then(work);
  chain = result.catch(() => {});
  return result;
}

// A core that has died may have left timers; their complaints concern nobody.
addEventListener("error", (event) => {
  if (event.message.includes("Go program has already exited")) event.preventDefault();
});

addEventListener("message", ({ data }: MessageEvent<ToWorker>) => {
  if (data.verb === "module") handed(data.module);
  else if (data.verb === "start") started = start(data);
  else void started.then(() => handle(data));
});

async function start(m: Start): Promise<void> {
  const life = new Life(m.failedStarts, (core, labels) => tell({ event: "core", core, ...(labels === undefined ? {} : { labels }) }), load, async (work) => {
    tell({ event: "calling", what: "start", limit: 5000 });
    try {
      return await work();
    } finally {
      tell({ event: "called" });
    }
  });
  // The core loads while storage is read.
  life.core().catch(() => {});
  const ledger = await openLedger(m);
  const session = new Session(
    ledger,
    life,
    (calling) => tell({ event: "calling", ...calling }),
    () => tell({ event: "called" }),
    () => tell({ event: "aside", aside: ledger.asides() }),
  );
  const snapshots = new Snapshots(ledger, session, inTurn, m.snapshots);
  if (m.suspect) await session.accuse(m.suspect, "the calculation did not answer").catch(() => {});
  desk = { ledger, session, snapshots, life };
  tell({ event: "storage", storage: ledger.commits.state() });
  reply({
    n: m.n,
    text: '{"ok":true}',
    start: { docs: ledger.infos(), aside: ledger.asides(), meta: ledger.meta },
  });
}

/** A storage that fails for a moment is asked again this long, every so often [ms]. */
const patience = 30_000;
const askAgain = 500;

/**
 * What the device holds. Only a browser that refuses storage gets an empty
 * ledger in memory, with the reason in words: a device that is merely busy
 * must not look like one that holds no job.
 */
async function openLedger(m: Start): Promise<Ledger> {
  // Once in memory, a session stays there: what it holds is nowhere else.
  if (m.rows) return loaded(inMemory(m.rows), "this browser refused storage when the page was opened", m);
  if (typeof indexedDB === "undefined") return loaded(inMemory([]), "this browser has no storage for pages", m);
  for (const until = performance.now() + patience; ; ) {
    try {
      const { store, restored } = await TwiceStore.over(await DeviceStore.open(), m.readOnly);
      if (restored) tell({ event: "restored" });
      return await loaded(store, null, m);
    } catch (problem) {
      const why = problem instanceof Error ? problem.message : String(problem);
      if (!mayPass(problem)) return loaded(inMemory([]), `this browser refuses storage: ${why}`, m);
      if (performance.now() > until) return loaded(inMemory([]), `the storage of this device does not answer: ${why}`, m);
      tell({ event: "storage", storage: { kind: "waiting", unsaved: 0, why } });
      await new Promise((later) => setTimeout(later, askAgain));
    }
  }
}

async function loaded(store: Store, why: string | null, m: Start): Promise<Ledger> {
  const commits = new Commits(store, why, (storage) => tell({ event: "storage", storage }), (doc) =>
    tell({ event: "conflict", doc }),
  );
  const ledger = new Ledger(store, commits, m.readOnly, (info) => tell({ event: "doc", info }));
  await ledger.load();
  return ledger;
}

function inMemory(rows: Row[]): MemoryStore {
  return new MemoryStore(rows, (ops) => tell({ event: "rows", ops }));
}

function reply(message: Reply): void {
  postMessage(message);
}

function handle(m: Asked): void {
  const now = desk;
  if (!now) {
    reply(refusal(m.n, "core-failed", "The page's storage could not be read."));
    return;
  }
  answer(now, m).then(reply, (problem) => reply(explained(m.n, m, problem)));
}

function answer(now: NonNullable<typeof desk>, m: Asked): Promise<Reply> {
  switch (m.verb) {
    case "enter": {
      const written = writeDown(now, m);
      if ("text" in written) return Promise.resolve(written);
      // A commit that fails before its turn comes is reported in its turn.
      written.saved.catch(() => {});
      return inTurn(() => enter(now, m, written));
    }
    case "show":
      return inTurn(() => show(now, m));
    case "open":
      return inTurn(() => open(now, m));
    case "save":
      return inTurn(() => save(now, m));
    case "keep":
      return inTurn(() => keep(now, m));
    case "close":
      return inTurn(() => close(now, m));
    default:
      return withoutCore(now, m);
  }
}

/** The verbs that work whatever state the core is in, and never wait for it. */
async function withoutCore(
  { ledger, life, session, snapshots }: NonNullable<typeof desk>,
  m: Extract<ToWorker, { verb: "filed" | "forget" | "rawSave" | "flush" | "retryCore" | "dropAside" | "setMeta" }>,
): Promise<Reply> {
  const ok: Reply = { n: m.n, text: '{"ok":true}' };
  if (ledger.readOnly && ["filed", "forget", "dropAside", "setMeta"].includes(m.verb)) {
    return refusal(m.n, "read-only", "Another tab is editing. This one does not change anything.");
  }
  switch (m.verb) {
    case "filed":
      await ledger.filed(m.doc, m.seq);
      return ok;
    case "forget":
      snapshots.forget(m.doc);
      session.closed(m.doc);
      await ledger.forget(m.doc);
      tell({ event: "forgotten", doc: m.doc });
      tell({ event: "aside", aside: ledger.asides() });
      return ok;
    case "rawSave": {
      const held = session.held(m.doc);
      const stored = held ? { row: held, records: [] } : await ledger.stored(m.doc);
      if (!stored) return refusal(m.n, "no-document", "There is no such job on this device.");
      const bytes = withPending(stored.row.bytes, stored.records);
      if (!bytes) return refusal(m.n, "broken", "The stored text is no job file.");
      const seq = ledger.doc(m.doc)?.lastSeq ?? 0;
      ledger.seal(m.doc);
      return { ...ok, bytes, seq };
    }
    case "flush":
      // Without the core the journal holds everything already.
      if (session.life.running()) await snapshots.takeAll();
      return ok;
    case "retryCore":
      life.retry();
      return ok;
    case "dropAside":
      ledger.dropAside(m.doc, m.seq);
      tell({ event: "aside", aside: ledger.asides() });
      return ok;
    case "setMeta":
      ledger.setMeta(m.meta);
      return ok;
  }
}

/** A refusal for whatever went wrong; an entry that is durable says so even then. */
function explained(n: number, m: ToWorker, problem: unknown): Reply {
  const says = problem instanceof Error ? problem.message : String(problem);
  if (problem instanceof Unavailable) {
    const kept = m.verb === "enter" ? " The entry is kept and will be taken in when the calculation runs again." : "";
    const savedAt = m.verb === "enter" ? desk?.ledger.doc(m.doc)?.savedAt : null;
    return { ...refusal(n, "core-unavailable", says + kept), ...(savedAt ? { savedAt } : {}) };
  }
  if (problem instanceof Conflict) {
    return refusal(n, "conflict", "Another tab has changed this job in between. It is read anew; enter this once more.");
  }
  if (problem instanceof NoDocument) return refusal(n, "no-document", says);
  if (problem instanceof Broken) return refusal(n, "broken", says);
  if (problem instanceof CoreDied) return refusal(n, "core-failed", says);
  return refusal(n, "core-failed", says);
}
