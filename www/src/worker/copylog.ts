// The second copy of what the device holds: every commit once more, in a file
// of our own. A browser whose database was cut off in the middle of a write may
// find it unreadable later and begin an empty one; this file is then what is left.
//
// Two files take turns. Each begins with a head {mark, generation} and one
// record with everything that was live when the file was begun; commits follow
// as they come. A record is {length of its text, length of its bytes, check
// sum} in 12 bytes, then text and bytes. Reading stops at the first record that
// is not whole, and writing goes on there: nothing is ever written behind a
// torn record.
import { keyOf } from "../protocol.ts";
import type { DocRow, Key, Op, Row, StoreName } from "../protocol.ts";

/** A file as a worker may use it: what FileSystemSyncAccessHandle offers. */
export interface LogFile {
  read(into: Uint8Array, options: { at: number }): number;
  write(bytes: Uint8Array, options: { at: number }): number;
  getSize(): number;
  truncate(size: number): void;
  flush(): void;
}

/** A step as written: bytes stand behind the text, in the order of the steps. */
type Written = { op: "put"; store: StoreName; row: object; bytes?: number } | { op: "delete"; store: StoreName; key: Key };

/** A row that is live, and where its bytes are in the file. */
interface Live {
  store: StoreName;
  row: object;
  at: number;
  bytes: number | undefined;
}

const mark = 0x67775f31; // "gw_1"
const headSize = 12;
const recordHead = 12;

/** A file is begun anew when it holds this much more than what is live [B]. */
const slack = 2 << 20;
const slackFactor = 3;

export class CopyLog {
  readonly #files: readonly [LogFile, LogFile];
  #current: 0 | 1 = 0;
  #generation = 0;
  #end = 0;
  /** Where the first record ends: the size of what was live. */
  #begun = 0;
  #live = new Map<string, Live>();

  constructor(files: readonly [LogFile, LogFile]) {
    this.#files = files;
    const [a, b] = files.map(headOf);
    for (const which of (b! > a! ? [1, 0] : [0, 1]) as (0 | 1)[]) {
      if (headOf(files[which]) > 0 && this.#read(which)) return;
    }
    this.replace([]);
  }

  /** Everything that is live. */
  rows(): Row[] {
    return [...this.#live.values()].map(
      ({ store, row, at, bytes }) => ({ store, row: bytes === undefined ? row : { ...row, bytes: this.#slice(at, bytes) } }) as Row,
    );
  }

  /** The documents that are live, as they were written last. */
  docs(): DocRow[] {
    return [...this.#live.values()].flatMap(({ store, row }) => (store === "docs" ? [row as DocRow] : []));
  }

  /** Writes a commit down; when this returns it is on the disk. */
  append(ops: readonly Op[]): void {
    this.#write(ops);
    this.#file.flush();
    const forgotten = ops.some((op) => op.op === "delete" && op.store === "docs");
    if (forgotten || this.#end > slackFactor * this.#begun + slack) this.replace(this.rows());
  }

  /** Begins the other file with these rows; the one before is emptied when they are on the disk. */
  replace(rows: readonly Row[]): void {
    const before = this.#file;
    const next = this.#current === 0 ? 1 : 0;
    const file = this.#files[next];
    file.truncate(0);
    this.#current = next;
    this.#end = headSize;
    this.#live = new Map();
    this.#write(rows.map((row): Op => ({ op: "put", ...row })));
    this.#begun = this.#end;
    this.#generation++;
    file.write(words(mark, this.#generation, mark ^ this.#generation), { at: 0 });
    file.flush();
    before.truncate(0);
    before.flush();
  }

  get #file(): LogFile {
    return this.#files[this.#current];
  }

  #slice(at: number, length: number): Uint8Array {
    const into = new Uint8Array(length);
    this.#file.read(into, { at });
    return into;
  }

  #write(ops: readonly Op[]): void {
    const parts: Uint8Array[] = [];
    const written = ops.map((op): Written => {
      if (op.op === "delete") return op;
      const { bytes, ...row } = op.row as { bytes?: Uint8Array | null };
      if (!bytes) return { op: "put", store: op.store, row: op.row };
      parts.push(bytes);
      return { op: "put", store: op.store, row, bytes: bytes.length };
    });
    const text = new TextEncoder().encode(JSON.stringify(written));
    const behind = parts.reduce((sum, part) => sum + part.length, 0);
    let at = this.#end + recordHead;
    for (const part of [text, ...parts]) at += this.#file.write(part, { at });
    if (at !== this.#end + recordHead + text.length + behind) throw new Error("the second copy took only a part");
    this.#file.write(words(text.length, behind, sum([text, ...parts])), { at: this.#end });
    this.#take(written, this.#end + recordHead + text.length);
    this.#end = at;
  }

  /** Takes the steps of a record whose bytes begin at `at`. */
  #take(written: readonly Written[], at: number): void {
    for (const step of written) {
      if (step.op === "delete") {
        this.#live.delete(name(step.store, step.key));
        continue;
      }
      this.#live.set(name(step.store, keyOf(step.store, step.row as never)), { store: step.store, row: step.row, at, bytes: step.bytes });
      at += step.bytes ?? 0;
    }
  }

  /** Reads a file up to the first record that is not whole; false if not even its beginning is. */
  #read(which: 0 | 1): boolean {
    this.#current = which;
    this.#live = new Map();
    this.#generation = headOf(this.#file);
    this.#end = headSize;
    this.#begun = 0;
    for (const size = this.#file.getSize(); this.#end + recordHead <= size; ) {
      const [text = 0, behind = 0, expected = 0] = new Uint32Array(this.#slice(this.#end, recordHead).buffer);
      const from = this.#end + recordHead;
      if (text === 0 || from + text + behind > size) break;
      const body = this.#slice(from, text + behind);
      if (sum([body]) !== expected) break;
      this.#take(JSON.parse(new TextDecoder().decode(body.subarray(0, text))) as Written[], from + text);
      this.#end = from + text + behind;
      this.#begun ||= this.#end;
    }
    if (this.#begun === 0) return false;
    this.#file.truncate(this.#end);
    return true;
  }
}

/** The generation of a file, 0 when it has no whole head. */
function headOf(file: LogFile): number {
  const head = new Uint32Array(3);
  if (file.read(new Uint8Array(head.buffer), { at: 0 }) < headSize) return 0;
  const [first, generation = 0, both] = head;
  return first === mark && both === (mark ^ generation) >>> 0 ? generation : 0;
}

function words(...numbers: number[]): Uint8Array {
  return new Uint8Array(Uint32Array.from(numbers).buffer);
}

function name(store: StoreName, key: Key): string {
  return JSON.stringify([store, key]);
}

/** FNV-1a over the parts in order: tells a torn record from a whole one. */
function sum(parts: readonly Uint8Array[]): number {
  let hash = 0x811c9dc5;
  for (const part of parts) for (let i = 0; i < part.length; i++) hash = Math.imul(hash ^ part[i]!, 0x01000193);
  return hash >>> 0;
}
