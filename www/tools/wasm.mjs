// The little of the WebAssembly binary format that www/tools needs: sections,
// and numbers in LEB128.

export const section = { imports: 2, functions: 3, code: 10, data: 11 };

/** The sections of a module, in order. */
export function sectionsOf(wasm) {
  const list = [];
  for (let r = new Reader(wasm, 8); r.at < wasm.length; ) {
    const id = r.byte();
    list.push({ id, body: r.bytes(r.leb()) });
  }
  return list;
}

/** The module with the body of each section replaced by what `change` makes of it. */
export function rebuilt(wasm, change) {
  const parts = [wasm.subarray(0, 8)];
  for (const { id, body } of sectionsOf(wasm)) {
    const content = change(id, body);
    parts.push(Buffer.from([id]), Buffer.from(leb(content.length)), content);
  }
  return Buffer.concat(parts);
}

export class Reader {
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
  /** A signed number; null when it has more than seven bytes and may not be exact. */
  signed() {
    let value = 0;
    let unit = 1;
    for (let n = 1; ; n++, unit *= 128) {
      const byte = this.byte();
      value += (byte & 127) * unit;
      if (byte < 128) return n > 7 ? null : byte & 64 ? value - unit * 128 : value;
    }
  }
}

/** The bytes of a number that is not negative. */
export function leb(value) {
  const bytes = [];
  for (; value > 127; value = Math.floor(value / 128)) bytes.push((value % 128) + 128);
  bytes.push(value);
  return bytes;
}

/** The bytes of a signed number: the last one holds the sign in bit 6. */
export function signedLeb(value) {
  const bytes = [];
  for (; value > 63 || value < -64; value = Math.floor(value / 128)) bytes.push((((value % 128) + 128) % 128) + 128);
  bytes.push((value + 128) % 128);
  return bytes;
}
