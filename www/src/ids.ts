// UUID version 7 (RFC 9562, section 5.7): 48 bits of Unix time in milliseconds,
// then random bits. The core never makes an id: time and chance come from here.

export function uuidv7(now: number = Date.now()): string {
  const b = crypto.getRandomValues(new Uint8Array(16));
  for (let i = 0, rest = now; i < 6; i++) {
    b[5 - i] = rest % 256;
    rest = Math.floor(rest / 256);
  }
  b[6] = 0x70 | (b[6]! & 0x0f);
  b[8] = 0x80 | (b[8]! & 0x3f);
  const hex = Array.from(b, (byte) => byte.toString(16).padStart(2, "0")).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}

/** Many ids, without holding up what else the thread has to do. */
export async function uuidsInTurns(count: number): Promise<string[]> {
  const list: string[] = [];
  while (list.length < count) {
    list.push(...uuids(Math.min(200, count - list.length)));
    await new Promise((later) => setTimeout(later));
  }
  return list;
}

export function uuids(count: number): string[] {
  const now = Date.now();
  return Array.from({ length: count }, () => uuidv7(now));
}
