// A slow line: stands between browser and server, lets so many bits through a
// second and delays every piece by half a round trip each way.
import { connect, createServer } from "node:net";

/** @returns {Promise<{port: number, close(): void, bytes: number}>} */
export async function slowLine(toPort, { bitsPerSecond, roundTrip }) {
  const half = roundTrip / 2;
  const line = { port: 0, bytes: 0, close: () => {} };
  // When the line is free again [ms]; all connections share it.
  let free = 0;
  const sockets = new Set();
  const server = createServer((client) => {
    const upstream = connect(toPort, "127.0.0.1");
    for (const socket of [client, upstream]) {
      sockets.add(socket);
      socket.on("error", () => {});
      socket.on("close", () => sockets.delete(socket));
    }
    // A new connection costs one round trip before the first request leaves.
    let ready = performance.now() + roundTrip;
    client.on("data", (part) => later(Math.max(0, ready - performance.now()) + half, () => upstream.write(part)));
    client.on("end", () => later(half, () => upstream.end()));
    upstream.on("data", (whole) => {
      // In pieces of a packet or so, so that connections take turns.
      for (let at = 0; at < whole.length; at += 4096) {
        const part = whole.subarray(at, at + 4096);
        line.bytes += part.length;
        free = Math.max(free, performance.now()) + (part.length * 8000) / bitsPerSecond;
        later(free - performance.now() + half, () => client.write(part));
      }
    });
    upstream.on("end", () => later(Math.max(0, free - performance.now()) + half, () => client.end()));
  });
  await new Promise((done) => server.listen(0, "127.0.0.1", done));
  line.port = server.address().port;
  line.close = () => {
    for (const socket of sockets) socket.destroy();
    server.close();
  };
  return line;
}

function later(ms, work) {
  setTimeout(work, Math.max(0, ms));
}
