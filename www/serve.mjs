// Serves www/build/ on this machine. PORT and HOST choose the address.
import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { staticServer } from "./tools/static.mjs";

const folder = join(dirname(fileURLToPath(import.meta.url)), "build");
if (!existsSync(join(folder, "index.html"))) {
  console.error("www/build/ is empty: run `make build` first");
  process.exit(1);
}
const host = process.env.HOST || "127.0.0.1";
const port = Number(process.env.PORT || 8737);
const server = staticServer(folder);
server.on("error", (problem) => {
  console.error(
    problem.code === "EADDRINUSE"
      ? `port ${port} is taken: choose another with PORT=8800 make run`
      : `cannot serve: ${problem.message}`,
  );
  process.exit(1);
});
server.listen(port, host, () => {
  const { address, port: bound } = server.address();
  console.log(`Gaugewright is at http://${address.includes(":") ? `[${address}]` : address}:${bound}/`);
});
