// Chromium for the tests: through playwright for most, and as a process of our
// own for the tests that kill it.
import { spawn, type ChildProcess } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import { after } from "node:test";
import { chromium, type BrowserContext, type Browser, type Page } from "playwright-core";

const flags = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

export function chromiumPath(): string {
  const names = ["chromium", "chromium-browser", "google-chrome"];
  const folders = ["/usr/bin", ...(process.env["PATH"] ?? "").split(delimiter)];
  const found = names.flatMap((name) => folders.map((folder) => join(folder, name))).find((path) => existsSync(path));
  if (!found) throw new Error("chromium is not installed: apt-get install chromium");
  return found;
}

/** A fresh profile folder; `drop` removes it. */
export function freshProfile(): { folder: string; drop(): void } {
  const folder = mkdtempSync(join(tmpdir(), "gaugewright-test-"));
  return { folder, drop: () => rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 }) };
}

let shared: Promise<Browser> | null = null;
after(async () => (await shared)?.close());

/**
 * Runs `work` in a window of its own: nothing is stored from before, and
 * nothing is left. All windows of one test file share a browser process.
 */
export async function withBrowser(work: (context: BrowserContext) => Promise<void>): Promise<void> {
  shared ??= chromium.launch({ executablePath: chromiumPath(), args: flags });
  const context = await (await shared).newContext();
  try {
    await work(context);
  } finally {
    await context.close();
  }
}

/** A browser that can be killed as by a flat battery. */
export class DoomedBrowser {
  private constructor(
    readonly process: ChildProcess,
    readonly browser: Browser,
  ) {}

  static async launch(profile: string): Promise<DoomedBrowser> {
    const portFile = join(profile, "DevToolsActivePort");
    rmSync(portFile, { force: true });
    // Its own process group, so that helpers die with it.
    const child = spawn(
      chromiumPath(),
      [...flags, "--remote-debugging-port=0", `--user-data-dir=${profile}`, "about:blank"],
      { stdio: "ignore", detached: true },
    );
    const deadline = Date.now() + 20000;
    let port = "";
    while (port === "") {
      if (Date.now() > deadline) throw new Error("chromium did not start");
      await new Promise((later) => setTimeout(later, 20));
      if (existsSync(portFile)) port = readFileSync(portFile, "utf8").split("\n")[0] ?? "";
    }
    try {
      return new DoomedBrowser(child, await chromium.connectOverCDP(`http://127.0.0.1:${port}`));
    } catch (problem) {
      // It went away before any page was there: nothing of it is left running.
      if (child.exitCode === null && child.signalCode === null) process.kill(-(child.pid ?? 0), "SIGKILL");
      throw problem;
    }
  }

  async page(): Promise<Page> {
    const context = this.browser.contexts()[0];
    if (!context) throw new Error("chromium has no window");
    return context.newPage();
  }

  /** SIGKILL to the whole process group, and the wait until it is gone. */
  async kill(): Promise<void> {
    const gone = new Promise((done) => this.process.once("exit", done));
    process.kill(-(this.process.pid ?? 0), "SIGKILL");
    await gone;
    await this.browser.close().catch(() => {});
  }
}
