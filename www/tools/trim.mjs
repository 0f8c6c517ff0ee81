// Makes the data of a compiled core lighter without changing what it computes:
// it joins the linker's tens of thousands of small segments, and clears the
// tables that only a trace reads: which line of which file an address belongs
// to, what was inlined there, which arguments to print. A trace of the page's
// core still names the functions that were called; for more, build the same
// source for this machine and run the same request through wasm/stdio.
import { Reader, leb, rebuilt, section, sectionsOf, signedLeb } from "./wasm.mjs";

// A new segment costs up to nine bytes, a run of zeros next to nothing once
// compressed: measured, longer gaps gain no more.
const GAP = 64;

/**
 * @param {Buffer} wasm as the Go linker wrote it
 * @returns {Buffer} the same program
 */
export function trimData(wasm) {
  return rebuilt(wasm, (id, body) => (id === section.data ? joined(cleared(image(body))) : body));
}

/** The memory as the module's data segments fill it at the start. */
export function memoryOf(wasm) {
  return image(sectionsOf(wasm).find(({ id }) => id === section.data).body);
}

function image(body) {
  const r = new Reader(body, 0);
  const segments = [];
  for (let n = r.leb(); n > 0; n--) {
    // Active in memory 0, at a constant address.
    expect(r, 0x00, 0x41);
    const address = r.leb();
    expect(r, 0x0b);
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
      segments.push(Buffer.from([0x00, 0x41, ...signedLeb(from), 0x0b, ...leb(bytes.length)]), bytes);
    }
    from = end;
  }
  return Buffer.concat([Buffer.from(leb(segments.length / 2)), ...segments]);
}

function expect(reader, ...wanted) {
  for (const byte of wanted) if (reader.byte() !== byte) throw new Error("a data segment of a kind that www/tools/trim.mjs does not know");
}

// Of the tables by address and the facts about a function (PCDATA and FUNCDATA
// of internal/abi) these are read by a trace, by a profile, or where a running
// function is interrupted, which wasm never does. What the collector and a
// deferred call need stays.
const unread = {
  byAddress: new Set([0, 2, 3]), // UnsafePoint, InlTreeIndex, ArgLiveIndex
  facts: new Set([3, 5, 6, 7]), // InlTree, ArgInfo, ArgLiveInfo, WrapInfo
};
const NO_FACT = 0xffffffff;

/**
 * The tables stand in the layout of runtime.pcHeader, runtime._func and
 * runtime.moduledata. Offset 0 means "no table" there, so a function without
 * its two line tables is one whose lines are not known. Equal tables stand
 * there once, so that one is cleared only when nobody needs it.
 */
function cleared(memory) {
  const header = headerOf(memory);
  const word = (at) => Number(memory.readBigUInt64LE(at));
  const functions = word(header + 8);
  const [names, units, files, programs, functab] = [32, 40, 48, 56, 64].map((field) => header + word(header + field));
  const [facts, factsEnd] = factsOf(memory, header, names);

  const kept = new Uint8Array(functab - programs);
  const keep = (offset) => offset !== 0 && kept.fill(1, offset, tableEnd(memory, programs + offset) - programs);
  const factNeeded = new Map();
  for (let n = 0; n < functions; n++) {
    const f = functab + memory.readUInt32LE(functab + 8 * n + 4);
    keep(memory.readUInt32LE(f + 16));
    // pcfile and pcln, then compilation unit and first line.
    memory.fill(0, f + 20, f + 28).fill(0, f + 32, f + 40);
    let at = f + 44;
    for (let table = 0, end = memory.readUInt32LE(f + 28); table < end; table++, at += 4) {
      if (unread.byAddress.has(table)) memory.writeUInt32LE(0, at);
      else keep(memory.readUInt32LE(at));
    }
    for (let fact = 0, end = memory[f + 43]; fact < end; fact++, at += 4) {
      const offset = memory.readUInt32LE(at);
      if (offset === NO_FACT) continue;
      factNeeded.set(offset, factNeeded.get(offset) || !unread.facts.has(fact));
      if (unread.facts.has(fact)) memory.writeUInt32LE(NO_FACT, at);
    }
  }
  for (let n = 0; n < kept.length; n++) if (!kept[n]) memory[programs + n] = 0;
  const offsets = [...factNeeded.keys()].sort((a, b) => a - b);
  offsets.forEach((offset, n) => {
    if (!factNeeded.get(offset)) memory.fill(0, facts + offset, n + 1 < offsets.length ? facts + offsets[n + 1] : factsEnd);
  });
  return memory.fill(0, units, programs);
}

/** Where the facts about functions begin and end, by the module's own record of its parts. */
function factsOf(memory, header, names) {
  const start = Buffer.alloc(16);
  start.writeBigUInt64LE(BigInt(header), 0);
  start.writeBigUInt64LE(BigInt(names), 8);
  const record = memory.indexOf(start);
  const [from, to] = [320, 328].map((field) => (record < 0 ? 0 : Number(memory.readBigUInt64LE(record + field))));
  if (record < 0 || memory.indexOf(start, record + 1) >= 0 || !(header < from && from < to && to < record)) throw new Error(otherLayout);
  return [from, to];
}

const otherLayout = "this Go toolchain lays out its line tables in a way that www/tools/trim.mjs does not know";

function headerOf(memory) {
  // go1.20 to go1.26: magic, two zeros, instructions of one byte, pointers of eight.
  const start = Buffer.from([0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8]);
  const at = memory.indexOf(start);
  const order = [32, 40, 48, 56, 64].map((field) => (at < 0 ? 0 : Number(memory.readBigUInt64LE(at + field))));
  const sound = order[0] === 72 && order.every((offset, n) => n === 0 || offset > order[n - 1]) && at + order[4] < memory.length;
  if (at < 0 || memory.indexOf(start, at + 1) >= 0 || !sound) {
    throw new Error(otherLayout);
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
