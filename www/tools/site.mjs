// Builds the whole static site into one folder. build.mjs calls it for the
// product; the browser tests call it for sites with a core that misbehaves.
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build as bundle } from "esbuild";
import { compileCore, loaderPath } from "./core.mjs";
import { escaped, indexHTML, manifest, resetHTML } from "./html.mjs";
import { iconPNG, iconSVG } from "./icon.mjs";
import { writeLabels } from "./labels.mjs";
import { headersFile } from "./policy.mjs";
import { precompress } from "./precompress.mjs";

const www = dirname(dirname(fileURLToPath(import.meta.url)));
const root = dirname(www);
const scratch = join(www, ".out");

/**
 * @param {object} options
 * @param {string} options.out folder to write, replaced whole
 * @param {string} [options.corePackage] Go main package that becomes the core
 * @param {string} [options.screens] folder with app.ts and first.ts, from www
 * @param {Record<string, string>} [options.labels] words of the page, by default those of the core
 * @param {string} [options.edition] text that makes this build differ from another of the same source
 * @param {boolean} [options.compress] write .br and .gz
 * @returns {Promise<{version: string, precached: string[]}>}
 */
export async function buildSite({
  out,
  corePackage = "./wasm/page",
  screens = "src/screens",
  labels = coreLabels(),
  edition = "",
  compress = true,
}) {
  // Built beside and moved into place whole: a failed build spoils nothing.
  const place = out;
  out = `${place}.new`;
  rmSync(out, { recursive: true, force: true });
  mkdirSync(join(out, "a"), { recursive: true });
  mkdirSync(scratch, { recursive: true });
  const written = [];
  const write = (name, content) => {
    mkdirSync(dirname(join(out, name)), { recursive: true });
    writeFileSync(join(out, name), content);
    written.push(join(out, name));
    return name;
  };
  const writeHashed = (name, ext, content) => {
    const hash = createHash("sha256").update(content).digest("hex").slice(0, 12);
    return write(`a/${name}-${hash}.${ext}`, content);
  };

  const wasm = join(scratch, `core-${corePackage.replace(/\W+/g, "-")}.wasm`);
  const core = writeHashed("core", "wasm", compileCore(root, corePackage, wasm));
  const worker = writeHashed(
    "worker",
    "js",
    await script("src/worker/main.ts", "iife", { __CORE__: beside(core) }),
  );
  const examples = packExamples(write, writeHashed);
  const css = writeHashed("app", "css", await style("src/style/main.css"));
  const js = writeHashed(
    "app",
    "js",
    await script("src/main.ts", "esm", { __CORE__: beside(core), __WORKER__: beside(worker), __EXAMPLES__: beside(examples) }, screens),
  );

  const name = labels["app.name"] ?? "Gaugewright";
  const description = labels["app.purpose"] ?? "Gauge readings for pressing piles";
  const first = await firstScreen(labels, screens);
  // With their hash in the name the service worker takes them from the
  // browser's cache instead of asking again.
  const icon = writeHashed("icon", "svg", iconSVG);
  const small = writeHashed("icon-192", "png", iconPNG(192));
  const large = writeHashed("icon-512", "png", iconPNG(512));
  const app = writeHashed(
    "manifest",
    "webmanifest",
    manifest({ name, description, icon: beside(icon), small: beside(small), large: beside(large) }),
  );
  const version = createHash("sha256")
    .update(JSON.stringify([core, worker, examples, css, js, icon, app, first, edition]))
    .digest("hex")
    .slice(0, 12);

  const page = indexHTML({ title: name, description, css, js, icon, touchIcon: small, manifest: app, first });
  write("index.html", page.replace("<title>", `<meta name="version" content="${escaped(version)}">\n<title>`));
  write("version.json", JSON.stringify({ version }) + "\n");
  write("reset.html", resetHTML({ js: writeHashed("reset", "js", await script("src/reset.ts", "esm", {})) }));

  // One atomic set: everything a session can ask for. "./" is the page itself.
  const precached = ["./", css, js, worker, core, examples, icon, app];
  const sw = await script("src/sw.ts", "iife", { __VERSION__: version, __PRECACHE__: precached });
  write("sw.js", sw);
  writeFileSync(join(out, "_headers"), headersFile());
  if (compress) await precompress(written, join(scratch, "compressed"));
  rmSync(place, { recursive: true, force: true });
  renameSync(out, place);
  return { version, precached };
}

/** The core's words, also written to src/gen for the screens. */
function coreLabels() {
  const file = join(www, "src", "gen", "labels.json");
  writeLabels(root, file);
  return JSON.parse(readFileSync(file, "utf8"));
}

/** The name as seen from another file in the same folder. */
function beside(name) {
  return name.slice(name.lastIndexOf("/") + 1);
}

async function script(entry, format, values, screens = "src/screens") {
  const result = await bundle({
    absWorkingDir: www,
    entryPoints: [entry],
    bundle: true,
    minify: true,
    write: false,
    format,
    target: ["es2022", "chrome111", "firefox115", "safari16.4"],
    legalComments: "none",
    charset: "utf8",
    alias: { "wasm-exec": loaderPath(root), screens: join(www, screens) },
    define: Object.fromEntries(Object.entries(values).map(([k, v]) => [k, JSON.stringify(v)])),
    logLevel: "warning",
  });
  return result.outputFiles[0].contents;
}

async function style(entry) {
  const result = await bundle({
    absWorkingDir: www,
    entryPoints: [entry],
    bundle: true,
    minify: true,
    write: false,
    target: ["chrome111", "firefox115", "safari16.4"],
    logLevel: "warning",
  });
  return result.outputFiles[0].contents;
}

/** Runs the screens' own function for the HTML that is there before any script. */
async function firstScreen(labels, screens) {
  const outfile = join(scratch, `first-${process.hrtime.bigint()}.mjs`);
  await bundle({
    absWorkingDir: www,
    entryPoints: [`${screens}/first.ts`],
    bundle: true,
    outfile,
    format: "esm",
    platform: "node",
    logLevel: "warning",
  });
  const module = await import(pathToFileURL(outfile).href);
  rmSync(outfile);
  return module.firstScreen(labels);
}

/**
 * Every example as its own file under examples/, and all of them in one file
 * that is precached: one request on the first visit, not one an example.
 */
function packExamples(write, writeHashed) {
  const folder = join(root, "examples");
  const names = existsSync(folder) ? readdirSync(folder).filter((n) => n.endsWith(".json")).sort() : [];
  const pack = {};
  for (const name of names) {
    const text = readFileSync(join(folder, name), "utf8");
    write(`examples/${name}`, text);
    pack[name] = text;
  }
  return writeHashed("examples", "json", JSON.stringify(pack));
}
