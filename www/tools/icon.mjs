// The icon: a gauge whose needle stands at a pressed pile. Drawn once as SVG
// and, for home screens that want pixels, once as PNG from the same numbers.
import * as zlib from "node:zlib";

export const iconSVG = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 512 512">
<rect width="512" height="512" fill="#fff"/>
<path d="M96 300a160 160 0 0 1 320 0" fill="none" stroke="#000" stroke-width="48"/>
<path d="M256 300L352 188" stroke="#000" stroke-width="32"/>
<rect x="224" y="300" width="64" height="148" fill="#000"/>
</svg>
`;

/** The icon as a PNG, `size` pixels square. */
export function iconPNG(size) {
  const rows = Buffer.alloc(size * (size + 1));
  const samples = 3;
  for (let y = 0; y < size; y++) {
    for (let x = 0; x < size; x++) {
      let ink = 0;
      for (let i = 0; i < samples * samples; i++) {
        const px = ((x + ((i % samples) + 0.5) / samples) * 512) / size;
        const py = ((y + (Math.floor(i / samples) + 0.5) / samples) * 512) / size;
        if (inked(px, py)) ink++;
      }
      rows[y * (size + 1) + 1 + x] = Math.round(255 * (1 - ink / (samples * samples)));
    }
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(size, 0);
  header.writeUInt32BE(size, 4);
  header[8] = 8; // bits a sample; colour type 0 is grey
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk("IHDR", header),
    chunk("IDAT", zlib.deflateSync(rows, { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

function inked(x, y) {
  const radius = Math.hypot(x - 256, y - 300);
  if (y <= 300 && radius >= 136 && radius <= 184) return true;
  if (x >= 224 && x <= 288 && y >= 300 && y <= 448) return true;
  // Distance from the needle, a segment from (256,300) to (352,188).
  const t = Math.min(1, Math.max(0, ((x - 256) * 96 - (y - 300) * 112) / (96 * 96 + 112 * 112)));
  return Math.hypot(x - 256 - 96 * t, y - 300 + 112 * t) <= 16;
}

function chunk(type, data) {
  const body = Buffer.concat([Buffer.from(type, "latin1"), data]);
  const out = Buffer.alloc(body.length + 8);
  out.writeUInt32BE(data.length, 0);
  body.copy(out, 4);
  out.writeUInt32BE(crc32(body), body.length + 4);
  return out;
}

// Node 20 before 20.15 has no zlib.crc32.
function crc32(bytes) {
  if (zlib.crc32) return zlib.crc32(bytes);
  let crc = ~0;
  for (const byte of bytes) {
    crc ^= byte;
    for (let k = 0; k < 8; k++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return ~crc >>> 0;
}
