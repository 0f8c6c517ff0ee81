// Makes a compiled core lighter without changing what it computes: it joins
// the linker's tens of thousands of small data segments, and clears the tables
// that tell a trace which line of which file an address belongs to. A trace of
// the page's core still names functions; for lines, build the same source for
// this machine and run the same request through wasm/stdio.

const DATA = 11;
// A new segment costs up to nine bytes, a run of zeros next to nothing once
// compressed: measured, longer gaps gain no more.
const GAP = 64;

/**
 * @param {Buffer} wasm as the Go linker wrote it
 * @returns {Buffer} the same program
 */
export function trimCore(wasm) {
  const parts = [wasm.subarray(0, 8)];
  for (const { id, body } of sections(wasm)) {
    const content = id === DATA ? joined(cleared(image(body))) : body;
    parts.push(Buffer.from([id]), leb(content.length), content);
  }
  return Buffer.concat(parts);
}

/** The memory as the module's data segments fill it at the start. */
export function memoryOf(wasm) {
  return image(sections(wasm).find(({ id }) => id === DATA).body);
}

function sections(wasm) {
  const list = [];
  for (let r = new Reader(wasm, 8); r.at < wasm.length; ) {
    const id = r.byte();
    list.push({ id, body: r.bytes(r.leb()) });
  }
  return list;
}

function image(body) {
  const r = new Reader(body, 0);
  const segments = [];
  for (let n = r.leb(); n > 0; n--) {
    // Active in memory 0, at a constant address.
    r.expect(0x00, 0x41);
    const address = r.leb();
    r.expect(0x0b);
    segments.push({ address, bytes: r.bytes(r.leb()) });
  }
  const memory = Buffer.alloc(Math.max(...segments.map(({ address, bytes }) => address + bytes.length)));
  for (const { address, bytes } of segments) bytes.copy(memory, address);
  return memory;
}

function joined(memory) {
  const segments = [];
  for (let from = 0; from < memory.length; ) {
    while (from < memory.length && memory[from] === 0) from++;
    let end = from;
    for (let at = from; at < memory.length && at - end < GAP; at++) if (memory[at] !== 0) end = at + 1;
    if (end > from) {
      const bytes = memory.subarray(from, end);
      segments.push(Buffer.from([0x00, 0x41]), signedLeb(from), Buffer.from([0x0b]), leb(bytes.length), bytes);
    }
    from = end;
  }
  return Buffer.concat([leb(segments.length / 5), ...segments]);
}

/**
 * The tables stand in the layout of runtime.pcHeader and runtime._func. Offset
 * 0 means "no table" there, so a function without its two line tables is one
 * whose lines are not known. Stack depths and what the collector needs share
 * the same bytes and stay.
 */
function cleared(memory) {
  const header = headerOf(memory);
  const word = (field) => Number(memory.readBigUInt64LE(header + field));
  const functions = word(8);
  const [units, files, programs, functab] = [40, 48, 56, 64].map((field) => header + word(field));

  const kept = new Uint8Array(functab - programs);
  const keep = (offset) => offset !== 0 && kept.fill(1, offset, tableEnd(memory, programs + offset) - programs);
  for (let n = 0; n < functions; n++) {
    const f = functab + memory.readUInt32LE(functab + 8 * n + 4);
    keep(memory.readUInt32LE(f + 16));
    for (let table = memory.readUInt32LE(f + 28); table > 0; table--) keep(memory.readUInt32LE(f + 40 + 4 * table));
    // pcfile and pcln, then compilation unit and first line.
    memory.fill(0, f + 20, f + 28).fill(0, f + 32, f + 40);
  }
  for (let n = 0; n < kept.length; n++) if (!kept[n]) memory[programs + n] = 0;
  return memory.fill(0, units, programs);
}

function headerOf(memory) {
  // go1.20 to go1.26: magic, two zeros, instructions of one byte, pointers of eight.
  const start = Buffer.from([0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8]);
  const at = memory.indexOf(start);
  const order = [32, 40, 48, 56, 64].map((field) => (at < 0 ? 0 : Number(memory.readBigUInt64LE(at + field))));
  const sound = order[0] === 72 && order.every((offset, n) => n === 0 || offset > order[n - 1]) && at + order[4] < memory.length;
  if (at < 0 || memory.indexOf(start, at + 1) >= 0 || !sound) {
    throw new Error("this Go toolchain lays out its line tables in a way that www/tools/trim.mjs does not know");
  }
  return at;
}

/** A table is pairs of value step and address step, both varints; a value step of 0 that is not the first ends it. */
function tableEnd(memory, at) {
  const r = new Reader(memory, at);
  for (let first = true; ; first = false) {
    if (r.leb() === 0 && !first) return r.at;
    r.leb();
  }
}

class Reader {
  constructor(from, at) {
    this.from = from;
    this.at = at;
  }
  byte() {
    return this.from[this.at++];
  }
  bytes(n) {
    return this.from.subarray(this.at, (this.at += n));
  }
  leb() {
    let value = 0;
    for (let unit = 1; ; unit *= 128) {
      const byte = this.byte();
      value += (byte & 127) * unit;
      if (byte < 128) return value;
    }
  }
  expect(...wanted) {
    for (const byte of wanted) if (this.byte() !== byte) throw new Error("a data segment of a kind that www/tools/trim.mjs does not know");
  }
}

function leb(value) {
  const bytes = [];
  for (; value > 127; value = Math.floor(value / 128)) bytes.push((value % 128) + 128);
  return Buffer.from([...bytes, value]);
}

/** Of a number that is not negative: its last byte leaves the sign bit clear. */
function signedLeb(value) {
  const bytes = [];
  for (; value > 63; value = Math.floor(value / 128)) bytes.push((value % 128) + 128);
  return Buffer.from([...bytes, value]);
}
