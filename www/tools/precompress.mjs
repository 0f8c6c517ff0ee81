// Puts .br and .gz beside every compressible file, compressed as hard as it
// goes: this is done once a build, not once a request.
import { readFileSync, writeFileSync } from "node:fs";
import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync } from "node:fs";
import { join } from "node:path";

const brotli = promisify(brotliCompress);
const gz = promisify(gzip);

const compressible = /\.(html|css|js|json|wasm|svg|webmanifest|txt)$/;

/** Compressing the core takes seconds, so results are kept by content in `cache`. */
export async function precompress(files, cache) {
  mkdirSync(cache, { recursive: true });
  await Promise.all(files.filter((f) => compressible.test(f)).map((f) => one(f, cache)));
}

async function one(file, cache) {
  const bytes = readFileSync(file);
  const digest = createHash("sha256").update(bytes).digest("hex").slice(0, 32);
  const params = {
    [constants.BROTLI_PARAM_QUALITY]: 11,
    [constants.BROTLI_PARAM_LGWIN]: 24,
    [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
  };
  const br = await kept(join(cache, digest + ".br"), () => brotli(bytes, { params }));
  const zipped = await kept(join(cache, digest + ".gz"), () => gz(bytes, { level: 9 }));
  writeFileSync(file + ".br", br);
  writeFileSync(file + ".gz", zipped);
}

async function kept(path, make) {
  if (existsSync(path)) return readFileSync(path);
  const bytes = await make();
  writeFileSync(path, bytes);
  return bytes;
}
