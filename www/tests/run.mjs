// Builds the sites the browser tests need, bundles the tests, and runs them
// with Node's own runner. Arguments choose test files by name.
import { spawnSync } from "node:child_process";
import { readdirSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build as bundle } from "esbuild";
import { buildSite } from "../tools/site.mjs";

const tests = dirname(fileURLToPath(import.meta.url));
const www = dirname(tests);
const out = join(www, ".out", "tests");

const core = (name) => `./www/tests/cores/${name}`;
const sites = {
  plain: { corePackage: core("plain") },
  newer: { corePackage: core("plain"), edition: "newer" },
  trap: { corePackage: core("trap") },
  sick: { corePackage: core("sick") },
  silent: { corePackage: core("silent") },
  mute: { corePackage: core("mute") },
};

const wanted = process.argv.slice(2);
const names = readdirSync(tests)
  .filter((name) => name.endsWith(".test.ts"))
  .filter((name) => wanted.length === 0 || wanted.some((w) => name.startsWith(w)));
if (names.length === 0) throw new Error(`no test is called ${wanted.join(", ")}`);

const plainest = { compress: false, screens: "tests/screens", labels: {} };
for (const [name, options] of Object.entries(sites)) {
  await buildSite({ out: join(www, ".out", "sites", name), ...plainest, ...options });
}
rmSync(out, { recursive: true, force: true });
await bundle({
  absWorkingDir: www,
  entryPoints: names.map((name) => `tests/${name}`),
  outdir: out,
  outExtension: { ".js": ".mjs" },
  bundle: true,
  format: "esm",
  platform: "node",
  packages: "external",
  sourcemap: "inline",
  // The tools find their folder by their own place, so they stay where they are.
  plugins: [
    {
      name: "tools",
      setup(build) {
        build.onResolve({ filter: /tools\/[a-z]+\.mjs$/ }, ({ path, resolveDir }) => ({
          path: pathToFileURL(join(resolveDir, path)).href,
          external: true,
        }));
      },
    },
  ],
});
const files = names.map((name) => join(out, name.replace(/\.ts$/, ".mjs")));
const { status } = spawnSync(
  process.execPath,
  ["--enable-source-maps", "--test", "--test-concurrency=2", "--test-reporter=spec", ...files],
  { stdio: "inherit", env: { ...process.env, WWW: www } },
);
process.exit(status ?? 1);
