// Says the code of a compiled core in fewer and more repetitive instructions.
//
// Go writes every function as one loop around nested blocks: local 0 holds the
// number of the place to go on at, a table at the loop's head jumps there, and
// each call is a place, because a goroutine may be taken off the stack there
// (every caller returns 1) and be put on it again. What is changed:
//
//   - In a function without a way back, a jump leaves its block directly, not by
//     way of loop and table.
//   - Going off the stack is said on the spot, not by a jump to the function's
//     end: the depth of that jump is another one at every call.
//   - A return address, 65,536 times the function's number plus the place, is
//     put together of the place and a local with the rest.
//   - The address of something on Go's stack, reckoned in 64 bits, becomes the
//     offset of the load or store that it is for.
//   - A function's end moves the stack pointer once, not twice.
//   - What comes to nothing is left out: nop, x = x, + 0.
//
// Each is the same program by itself, whatever the code around it. What is not
// written in the way that is known here stays as it is.
import { Reader, leb, rebuilt, section, signedLeb } from "./wasm.mjs";

const op = {
  nop: 0x01, block: 0x02, loop: 0x03, if: 0x04, end: 0x0b, br: 0x0c, brIf: 0x0d, brTable: 0x0e, return: 0x0f,
  call: 0x10, callIndirect: 0x11, get: 0x20, set: 0x21, tee: 0x22, globalGet: 0x23, globalSet: 0x24,
  firstLoad: 0x28, lastLoad: 0x35, firstStore: 0x36, lastStore: 0x3e, memorySize: 0x3f, memoryGrow: 0x40,
  i32Const: 0x41, i64Const: 0x42, f32Const: 0x43, f64Const: 0x44, i32Add: 0x6a, i64Add: 0x7c, i64Or: 0x84,
  i32WrapI64: 0xa7, i64ExtendI32U: 0xad, bulk: 0xfc,
}; // prettier-ignore

/** The place to go on at, Go's parameter of every function. */
const PLACE = 0;
/** A local copy of Go's stack pointer, which is global 0. */
const STACK = 1;
/** The type of no value, of blocks. */
const NOTHING = 0x40;
const I64 = 0x7e;
const I32 = 0x7f;
/** Number of the first function, as Go counts them. */
const FIRST = 0x1000;

/**
 * @param {Buffer} wasm as the Go linker wrote it
 * @returns {Buffer} the same program
 */
export function shortenCode(wasm) {
  return rebuilt(wasm, (id, body) => (id === section.code ? shortened(body) : body));
}

function shortened(body) {
  const r = new Reader(body, 0);
  const count = r.leb();
  const parts = [Buffer.from(leb(count))];
  let jumps = 0;
  for (let n = 0; n < count; n++) {
    const size = r.leb();
    const f = readFunction(body, r.at, size);
    const own = r.bytes(size);
    if (!isGo(f)) {
      parts.push(Buffer.from(leb(size)), own);
      continue;
    }
    splitAddresses(f, FIRST + n);
    f.code = withoutIdle(f.code);
    f.code = withOffsets(f.code);
    const before = f.code.length;
    f.code = withDirectJumps(f.code);
    jumps += before - f.code.length;
    f.code = withExits(f.code);
    f.code = withOneReturn(f.code);
    const written = writeFunction(f);
    parts.push(Buffer.from(leb(written.length)), written);
  }
  if (jumps === 0) throw new Error("this Go toolchain writes jumps in a way that www/tools/shorten.mjs does not know");
  return Buffer.concat(parts);
}

/** An assembly routine with another signature, or glue of the linker, begins otherwise. */
function isGo({ code, locals }) {
  return matches(code, 0, takesStack) && locals[0]?.count === 1 && locals[0].type === I32;
}

// --- Reading and writing ---
//
// An instruction is { op, args }; a block knows nothing more, its end has `of`,
// a jump has `to` instead of depths: blocks, or the function itself.

function readFunction(body, at, size) {
  const r = new Reader(body, at);
  const locals = [];
  for (let n = r.leb(); n > 0; n--) locals.push({ count: r.leb(), type: r.byte() });
  const whole = {};
  const code = [];
  const open = [whole];
  const label = () => open[open.length - 1 - r.leb()];
  while (r.at < at + size) {
    const start = r.at;
    const it = { op: r.byte(), args: [] };
    switch (it.op) {
      case op.block:
      case op.loop:
      case op.if:
        it.args.push(r.byte());
        open.push(it);
        break;
      case op.end:
        it.of = open.pop();
        break;
      case op.br:
      case op.brIf:
        it.to = [label()];
        break;
      case op.brTable:
        it.to = [];
        for (let n = r.leb(); n >= 0; n--) it.to.push(label());
        break;
      case op.call:
      case op.get:
      case op.set:
      case op.tee:
      case op.globalGet:
      case op.globalSet:
      case op.memorySize:
      case op.memoryGrow:
        it.args.push(r.leb());
        break;
      case op.callIndirect:
        it.args.push(r.leb(), r.leb());
        break;
      case op.i32Const:
      case op.i64Const: {
        const value = r.signed();
        if (value === null) it.bytes = body.subarray(start, r.at);
        else it.args.push(value);
        break;
      }
      case op.f32Const:
      case op.f64Const:
        r.bytes(it.op === op.f32Const ? 4 : 8);
        it.bytes = body.subarray(start, r.at);
        break;
      case op.bulk: {
        // Conversions that saturate; copy has two memories, fill has one.
        const kind = r.leb();
        if (kind > 7 && kind !== 10 && kind !== 11) throw unknown(it.op, kind);
        r.bytes(kind === 10 ? 2 : kind === 11 ? 1 : 0);
        it.bytes = body.subarray(start, r.at);
        break;
      }
      default:
        if (isLoad(it) || isStore(it)) it.args.push(r.leb(), r.leb());
        else if (it.op > 0xc4) throw unknown(it.op);
    }
    code.push(it);
  }
  return { locals, code, whole };
}

function unknown(...bytes) {
  return new Error(`an instruction that www/tools/shorten.mjs does not know: ${bytes.join(" ")}`);
}

function writeFunction({ locals, code, whole }) {
  const out = leb(locals.length);
  const put = (bytes) => {
    for (const byte of bytes) out.push(byte);
  };
  for (const { count, type } of locals) put([...leb(count), type]);
  const depthOf = new Map([[whole, 0]]);
  let depth = 0;
  for (const it of code) {
    if (it.bytes) {
      put(it.bytes);
      continue;
    }
    out.push(it.op);
    if (it.op === op.block || it.op === op.loop || it.op === op.if) depthOf.set(it, ++depth);
    if (it.op === op.end) depth--;
    if (it.op === op.brTable) put(leb(it.to.length - 1));
    for (const label of it.to ?? []) put(leb(depth - depthOf.get(label)));
    const number = it.op === op.i32Const || it.op === op.i64Const ? signedLeb : leb;
    for (const value of it.args) put(number(value));
  }
  return Buffer.from(out);
}

// --- Patterns ---

const instruction = (op, ...args) => ({ op, args });
const isLoad = (it) => it.op >= op.firstLoad && it.op <= op.lastLoad;
const isStore = (it) => it.op >= op.firstStore && it.op <= op.lastStore;

/** Whether a pattern stands at a place: pairs of operation and its first argument, if that matters. */
function matches(code, at, pattern) {
  for (let n = 0; n < pattern.length; n++) {
    const it = code[at + n];
    const [wanted, value] = pattern[n];
    if (it?.op !== wanted || (value !== undefined && it.args[0] !== value)) return false;
  }
  return true;
}

const takesStack = [[op.globalGet, 0], [op.set, STACK]]; // prettier-ignore
const stackAddress = [[op.get, STACK], [op.i64ExtendI32U], [op.i64Const], [op.i64Add], [op.i32WrapI64]]; // prettier-ignore
const freesStack = [[op.get, STACK], [op.i32Const], [op.i32Add], [op.tee, STACK], [op.globalSet, 0]]; // prettier-ignore
const returns = [[op.i32Const], [op.return]];
const borrows = [[op.set, PLACE], [op.i32Const, 0], [op.get, PLACE], [op.callIndirect]]; // prettier-ignore
const jump = [[op.i32Const], [op.set, PLACE], [op.br]]; // prettier-ignore

// --- Rewriting ---

/** A constant that begins with the function's own number becomes place | local 2. */
function splitAddresses(f, number) {
  const BASE = 2;
  const isOwn = (it) => it.op === op.i64Const && it.args.length > 0 && Math.floor(it.args[0] / 65536) === number;
  if (!f.code.some(isOwn)) return;
  const code = [instruction(op.i64Const, number * 65536), instruction(op.set, BASE)];
  for (const it of f.code) {
    if (isOwn(it)) code.push(instruction(op.i64Const, it.args[0] % 65536), instruction(op.get, BASE), instruction(op.i64Or));
    else if ((it.op === op.get || it.op === op.set || it.op === op.tee) && it.args[0] >= BASE) code.push(instruction(it.op, it.args[0] + 1));
    else code.push(it);
  }
  f.code = code;
  if (f.locals[1]?.type === I64) f.locals[1].count++;
  else f.locals.splice(1, 0, { count: 1, type: I64 });
}

function withoutIdle(code) {
  const out = [];
  for (const it of code) {
    const last = out.at(-1);
    const same = last !== undefined && last.args[0] === it.args[0];
    if (it.op === op.nop) continue;
    if (it.op === op.get && last?.op === op.set && same) out.splice(-1, 1, instruction(op.tee, it.args[0]));
    else if (it.op === op.set && last?.op === op.tee && same) out.splice(-1, 1, it);
    else if (it.op === op.set && last?.op === op.get && same) out.pop();
    else if (it.op === op.tee && last?.op === op.get && same) continue;
    else if (it.op === op.i64Add && last?.op === op.i64Const && last.args[0] === 0) out.pop();
    else out.push(it);
  }
  return out;
}

/** Go's stack lies within the memory of 4 GiB, so that an address on it is less than 2^32 in either width. */
function withOffsets(code) {
  const out = [];
  const more = new Map();
  for (let k = 0; k < code.length; k++) {
    const offset = matches(code, k, stackAddress) ? code[k + 2].args[0] : -1;
    if (offset >= 0) {
      out.push(code[k]);
      k += 4;
      const user = userOf(code, k + 1);
      if (user) more.set(user, offset);
      else out.push(instruction(op.i32Const, offset), instruction(op.i32Add));
    } else if (more.has(code[k])) {
      const [align, before] = code[k].args;
      out.push(instruction(code[k].op, align, before + more.get(code[k])));
    } else {
      out.push(code[k]);
    }
  }
  return out;
}

/** The load or store that takes as its address what is on top of the stack before `at`. */
function userOf(code, at) {
  for (let above = 0; at < code.length; at++) {
    const [pops, pushes] = effectOf(code[at].op);
    if (above < pops) return (isLoad(code[at]) && above === 0) || (isStore(code[at]) && above === 1) ? code[at] : null;
    above += pushes - pops;
  }
  return null;
}

/** Values taken from the stack and put on it. What leaves the straight line takes everything. */
function effectOf(o) {
  if (o === op.get || o === op.globalGet || (o >= op.i32Const && o <= op.f64Const)) return [0, 1];
  if (o === op.set || o === op.globalSet) return [1, 0];
  if (o === op.tee || (o >= op.firstLoad && o <= op.lastLoad)) return [1, 1];
  if (o >= op.firstStore && o <= op.lastStore) return [2, 0];
  const unary = o === 0x45 || o === 0x50 || (o >= 0x67 && o <= 0x69) || (o >= 0x79 && o <= 0x7b);
  if (unary || (o >= 0x8b && o <= 0x91) || (o >= 0x99 && o <= 0x9f) || (o >= 0xa7 && o <= 0xc4)) return [1, 1];
  if (o >= 0x46 && o <= 0xa6) return [2, 1];
  return [Infinity, 0];
}

/**
 * Only where every jump goes forward: in functions that also jump back, direct
 * jumps were measured 10 to 25 % slower.
 */
function withDirectJumps(code) {
  // The loop's head: get PLACE, br_table, in the innermost of the blocks.
  const head = code.findIndex((it) => it.op === op.brTable);
  if (head < 0 || !matches(code, head - 1, [[op.get, PLACE]]) || !readsPlaceOnlyAt(code, head - 1)) return code;
  const table = code[head].to;
  const loop = code.find((it) => it.op === op.loop);
  const out = [];
  const open = new Set();
  for (let k = 0; k < code.length; k++) {
    const it = code[k];
    if (it.op === op.block) open.add(it);
    if (it.op === op.end) open.delete(it.of);
    if (!matches(code, k, jump) || code[k + 2].to[0] !== loop) {
      if (it.to?.includes(loop)) return code;
      out.push(it);
      continue;
    }
    const target = table[Math.min(it.args[0], table.length - 1)];
    if (!open.has(target)) return code;
    // An if around nothing but the jump makes it a jump on a condition.
    const alone = out.at(-1)?.op === op.if && code[k + 3].of === out.at(-1);
    if (alone) out.pop();
    out.push({ op: alone ? op.brIf : op.br, args: [], to: [target] });
    k += alone ? 3 : 2;
  }
  return out;
}

/** An indirect call borrows PLACE for a moment: that does not count. */
function readsPlaceOnlyAt(code, at) {
  return code.every((it, k) => it.op !== op.get || it.args[0] !== PLACE || k === at || matches(code, k - 2, borrows));
}

/** Jumps on a condition to the end of the function, where 1 is returned. */
function withExits(code) {
  const [one, end] = code.slice(-2);
  const last = code.at(-3);
  if (last?.op !== op.end || one.op !== op.i32Const || one.args[0] !== 1 || end.op !== op.end) return code;
  const out = [];
  for (const it of code) {
    if (it.op !== op.brIf || it.to[0] !== last.of) {
      out.push(it);
      continue;
    }
    const unwinding = instruction(op.if, NOTHING);
    out.push(unwinding, one, instruction(op.return), { op: op.end, args: [], of: unwinding });
  }
  return out;
}

/** Frame and return address are freed in one step; nobody reads the local copy after that. */
function withOneReturn(code) {
  const out = [];
  for (let k = 0; k < code.length; k++) {
    let freed = 0;
    let at = k;
    for (; matches(code, at, freesStack); at += freesStack.length) freed += code[at + 1].args[0];
    if (at === k || !matches(code, at, returns)) {
      out.push(code[k]);
      continue;
    }
    out.push(code[k], instruction(op.i32Const, freed), code[k + 2], code[k + 4]);
    k = at - 1;
  }
  return out;
}
