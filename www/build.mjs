// Builds the page into www/build/. Run by `make build`.
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { buildSite } from "./tools/site.mjs";

const out = join(dirname(fileURLToPath(import.meta.url)), "build");
try {
  const { version } = await buildSite({ out });
  console.log(`built www/build, version ${version}`);
} catch (problem) {
  // What the compilers had to say stands above already.
  console.error(`the page is not built: ${problem.message.split("\n")[0]}`);
  process.exit(1);
}
