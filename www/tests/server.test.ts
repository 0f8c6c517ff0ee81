// The static server treats files as the edge does, and gives nothing else away.
import assert from "node:assert/strict";
import { connect } from "node:net";
import { brotliDecompressSync, gunzipSync } from "node:zlib";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { check } from "./check.ts";
import { Site, www } from "./site.ts";
import { headersFor, parseHeaders } from "../tools/headers.mjs";

async function withSite(work: (site: Site) => Promise<void>): Promise<void> {
  const site = await Site.open("build");
  try {
    await work(site);
  } finally {
    await site.close();
  }
}

/** One request as raw text, so that nothing tidies up the path. */
function raw(site: Site, path: string, headers: string[] = []): Promise<{ status: number; head: string; body: Buffer }> {
  const { hostname, port } = new URL(site.url);
  return new Promise((done, failed) => {
    const socket = connect(Number(port), hostname);
    const parts: Buffer[] = [];
    socket.on("data", (part: Buffer) => parts.push(part));
    socket.on("error", failed);
    socket.on("end", () => {
      const all = Buffer.concat(parts);
      const end = all.indexOf("\r\n\r\n");
      const head = all.subarray(0, end).toString("latin1");
      done({ status: Number(head.split(" ")[1]), head: head.toLowerCase(), body: all.subarray(end + 4) });
    });
    socket.end([`GET ${path} HTTP/1.1`, "Host: x", "Connection: close", ...headers, "", ""].join("\r\n"));
  });
}

const core = () => `/a/${readdirSync(join(www, "build", "a")).find((name) => /^core-.*\.wasm$/.test(name))}`;

check("nothing outside the folder and no helper file is served", () =>
  withSite(async (site) => {
    for (const path of [
      "/../package.json",
      "/a/../../package.json",
      "/%2e%2e/package.json",
      "/..%2fpackage.json",
      "/a/..%2f..%2fpackage.json",
      "//etc/passwd",
      "/index.html%00.js",
      "/_headers",
      "/index.html.br",
      "/a/",
      "/a",
      "/nothing",
    ]) {
      const { status, head, body } = await raw(site, path);
      assert.equal(status, 404, path);
      assert.match(head, /content-type: text\/plain/, path);
      assert.doesNotMatch(body.toString(), /html|"name"|root:/, path);
    }
    assert.equal((await raw(site, "/%zz")).status, 400);
    assert.equal((await fetch(site.url, { method: "POST" })).status, 405);
  }));

check("the smaller form is sent to a client that takes it, the plain one to others", () =>
  withSite(async (site) => {
    const plain = readFileSync(join(www, "build", core()));
    const br = await raw(site, core(), ["Accept-Encoding: gzip, deflate, br"]);
    assert.match(br.head, /content-encoding: br/);
    assert.match(br.head, /vary: accept-encoding/);
    assert.match(br.head, /content-type: application\/wasm/);
    assert.ok(brotliDecompressSync(br.body).equals(plain));
    const gz = await raw(site, core(), ["Accept-Encoding: gzip, br;q=0"]);
    assert.match(gz.head, /content-encoding: gzip/);
    assert.ok(gunzipSync(gz.body).equals(plain));
    const none = await raw(site, core());
    assert.doesNotMatch(none.head, /content-encoding/);
    assert.ok(none.body.equals(plain));
  }));

check("only files with their hash in the name are immutable; the rest is asked about, and cheaply", () =>
  withSite(async (site) => {
    assert.match((await raw(site, core())).head, /cache-control: public, max-age=31536000, immutable\r?$/m);
    for (const path of ["/", "/index.html", "/sw.js", "/version.json"]) {
      assert.match((await raw(site, path)).head, /cache-control: no-cache\r?$/m, path);
    }
    for (const path of ["/reset.html"]) {
      assert.match((await raw(site, path)).head, /cache-control: public, max-age=0, must-revalidate\r?$/m, path);
    }
    const etag = /etag: (".*")/.exec((await raw(site, "/")).head)?.[1] ?? "";
    // The tag was lowered together with the head, so it is asked for anew.
    const tag = (await fetch(site.url, { headers: { "Accept-Encoding": "identity" } })).headers.get("etag") ?? "";
    assert.equal(tag.toLowerCase(), etag);
    const unchanged = await raw(site, "/", [`If-None-Match: ${tag}`]);
    assert.equal(unchanged.status, 304);
    assert.equal(unchanged.body.length, 0);
  }));

check("the header file is read as the edge reads it", async () => {
  const rules = parseHeaders("/*\n  A: 1\n\n/x/*\n  B: 2\n  A: 3\n/x/y.js\n  C: 4:5\n");
  assert.deepEqual([...headersFor(rules, "/")], [["a", "1"]]);
  assert.deepEqual([...headersFor(rules, "/x/y.js")], [["a", "1, 3"], ["b", "2"], ["c", "4:5"]]);
  assert.deepEqual([...headersFor(rules, "/x/yzjs")], [["a", "1, 3"], ["b", "2"]]);
  assert.throws(() => parseHeaders("  A: 1\n"), /header file/);
});
