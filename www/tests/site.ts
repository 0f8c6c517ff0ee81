// A server for one of the test sites, on a free port of this machine.
import { readFileSync } from "node:fs";
import type { IncomingMessage, Server, ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import type { BrowserContext } from "playwright-core";
import { staticServer } from "../tools/static.mjs";
import { withBrowser } from "./browser.ts";

export const www = process.env["WWW"] ?? "";

/** "build" is the product itself; the others have a core of tests/cores. */
export type SiteName = "build" | "plain" | "newer" | "trap" | "sick" | "silent" | "mute";

function folder(name: SiteName): string {
  return name === "build" ? join(www, "build") : join(www, ".out", "sites", name);
}

export class Site {
  #server: Server;
  #port = 0;
  #name: SiteName;
  /** Paths asked for, in order. */
  readonly asked: string[] = [];
  /** May answer a request in the site's place by returning true. */
  before: (request: IncomingMessage, response: ServerResponse) => boolean = () => false;

  private constructor(name: SiteName) {
    this.#name = name;
    this.#server = this.#make(name);
  }

  static async open(name: SiteName): Promise<Site> {
    const site = new Site(name);
    await site.#listen(0);
    return site;
  }

  get url(): string {
    return `http://127.0.0.1:${this.#port}/`;
  }

  /** Serves the worker's script with some lines of JavaScript in front of it. */
  patchWorker(lines: string): void {
    this.before = (request, response) => {
      if (!/^\/a\/worker-/.test(request.url ?? "")) return false;
      const script = readFileSync(join(folder(this.#name), request.url ?? ""), "utf8");
      response.setHeader("Content-Type", "text/javascript");
      response.end(`${lines}\n${script}`);
      return true;
    };
  }

  /** The same address, another site: what a host does when a new version is put up. */
  async become(name: SiteName): Promise<void> {
    await this.close();
    this.#name = name;
    this.#server = this.#make(name);
    await this.#listen(this.#port);
  }

  async close(): Promise<void> {
    this.#server.closeAllConnections();
    await new Promise((done) => this.#server.close(done));
  }

  #make(name: SiteName): Server {
    return staticServer(folder(name), (request: IncomingMessage, response: ServerResponse) => {
      this.asked.push(request.url ?? "");
      return this.before(request, response);
    });
  }

  async #listen(port: number): Promise<void> {
    await new Promise<void>((done) => this.#server.listen(port, "127.0.0.1", done));
    this.#port = (this.#server.address() as AddressInfo).port;
  }
}

/** Runs `work` with a site and a window of its own; the site may be closed before. */
export async function onSite(name: SiteName, work: (context: BrowserContext, site: Site) => Promise<void>): Promise<void> {
  const site = await Site.open(name);
  try {
    await withBrowser((context) => work(context, site));
  } finally {
    await site.close();
  }
}
