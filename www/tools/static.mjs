// A small static file server that treats files as the edge does: types by
// ending, the header file, pre-compressed neighbours, ETag. No dependency.
import { createHash } from "node:crypto";
import { existsSync, readFileSync, statSync } from "node:fs";
import { createServer } from "node:http";
import { extname, join, resolve, sep } from "node:path";
import { headersFor, parseHeaders } from "./headers.mjs";

const types = {
  ".html": "text/html; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".wasm": "application/wasm",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".txt": "text/plain; charset=utf-8",
  ".webmanifest": "application/manifest+json",
};

/**
 * A server for `folder`, not yet listening.
 * @param {string} folder
 * @param {(request: import("node:http").IncomingMessage, response: import("node:http").ServerResponse) => boolean} before
 *   may answer a request itself by returning true
 */
export function staticServer(folder, before = () => false) {
  const base = resolve(folder);
  return createServer((request, response) => {
    try {
      if (!before(request, response)) serve(base, request, response);
    } catch (problem) {
      plain(response, 500, `the server failed: ${problem.message}`);
    }
  });
}

function serve(base, request, response) {
  if (request.method !== "GET" && request.method !== "HEAD") {
    response.setHeader("Allow", "GET, HEAD");
    return plain(response, 405, "only GET and HEAD are answered");
  }
  let path;
  try {
    path = decodeURIComponent(new URL(request.url, "http://localhost").pathname);
  } catch {
    return plain(response, 400, "this address cannot be read");
  }
  const file = path.includes("\0") ? null : fileOf(base, path);
  const headerFile = join(base, "_headers");
  const rules = existsSync(headerFile) ? parseHeaders(readFileSync(headerFile, "utf8")) : [];
  const headers = headersFor(rules, path);
  if (file === null) {
    for (const [name, value] of headers) if (name !== "cache-control") response.setHeader(name, value);
    return plain(response, 404, "there is no such file here");
  }
  headers.set("content-type", types[extname(file)] ?? "application/octet-stream");
  if (!headers.has("cache-control")) headers.set("cache-control", "public, max-age=0, must-revalidate");
  const { bytes, encoding } = best(file, request.headers["accept-encoding"] ?? "");
  if (existsSync(file + ".br") || existsSync(file + ".gz")) headers.set("vary", "Accept-Encoding");
  if (encoding) headers.set("content-encoding", encoding);
  const etag = `"${createHash("sha256").update(bytes).digest("base64url").slice(0, 22)}"`;
  headers.set("etag", etag);
  for (const [name, value] of headers) response.setHeader(name, value);
  if ((request.headers["if-none-match"] ?? "").split(/\s*,\s*/).some((t) => t === etag || t === `W/${etag}`)) {
    response.statusCode = 304;
    return void response.end();
  }
  response.setHeader("Content-Length", bytes.length);
  response.end(request.method === "HEAD" ? undefined : bytes);
}

/** The file of a path, or null: nothing outside the folder, no helper files, no folder listing. */
function fileOf(base, path) {
  const file = resolve(join(base, path.endsWith("/") ? path + "index.html" : path));
  if (!file.startsWith(base + sep) || path === "/_headers" || /\.(br|gz)$/.test(path)) return null;
  return existsSync(file) && statSync(file).isFile() ? file : null;
}

/** The smallest form the client says it takes. */
function best(file, accept) {
  const takes = (name) =>
    accept.split(",").some((part) => {
      const [coding, ...params] = part.trim().toLowerCase().split(/\s*;\s*/);
      return coding === name && !params.some((p) => /^q=0(\.0*)?$/.test(p));
    });
  for (const [encoding, ending] of [["br", ".br"], ["gzip", ".gz"]]) {
    if (takes(encoding) && existsSync(file + ending)) return { bytes: readFileSync(file + ending), encoding };
  }
  return { bytes: readFileSync(file), encoding: null };
}

function plain(response, status, text) {
  response.statusCode = status;
  response.setHeader("Content-Type", "text/plain; charset=utf-8");
  response.end(text + "\n");
}
