// Nothing leaves the origin, and what comes in as text stays text.
import assert from "node:assert/strict";
import type { Page } from "playwright-core";
import { check } from "./check.ts";
import { openNew, settled, type, visit } from "./page.ts";
import { onSite } from "./site.ts";

const directives = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  "manifest-src 'self'",
  "form-action 'none'",
  "base-uri 'none'",
];

declare global {
  var violations: string[];
}

/** Counts what the policy had to stop; from before the first script on. */
function countViolations(page: Page) {
  return page.addInitScript(() => {
    globalThis.violations = [];
    addEventListener("securitypolicyviolation", (event) =>
      violations.push(`${event.effectiveDirective} ${event.blockedURI}`),
    );
  });
}

check("the product asks its own origin for everything and breaks no rule of its policy", () =>
  onSite("build", async (context, site) => {
    const addresses: string[] = [];
    context.on("request", (request) => addresses.push(request.url()));
    const page = await context.newPage();
    await countViolations(page);
    const response = await page.goto(site.url);
    await settled(page);
    await page.waitForFunction(() => gaugewright.signals.offlineReady.value);
    const foreign = addresses.filter((url) => !url.startsWith(site.url) && !/^(blob|data):/.test(url));
    assert.deepEqual(foreign, []);
    assert.ok(addresses.length > 3);
    assert.deepEqual(await page.evaluate(() => violations), []);
    const header = response?.headers()["content-security-policy"] ?? "";
    assert.deepEqual(header.split("; "), [...directives, "frame-ancestors 'none'"]);
    const meta = await page.getAttribute("meta[http-equiv='Content-Security-Policy']", "content");
    assert.deepEqual(meta?.split("; "), directives);
  }),
);

for (const form of ["header", "meta"] as const) {
  check(`the policy is in force by ${form} alone`, () =>
    onSite("plain", async (context, site) => {
      await context.route(site.url, async (route) => {
        const response = await route.fetch();
        const headers = { ...response.headers() };
        let body = await response.text();
        if (form === "header") body = body.replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, "");
        else delete headers["content-security-policy"];
        await route.fulfill({ response, headers, body });
      }, { times: 1 }); // the visit; what the service worker asks for later is not waited for
      const page = await context.newPage();
      await countViolations(page);
      await visit(page, site.url);
      await page.evaluate(() => {
        const script = document.createElement("script");
        script.textContent = "globalThis.ran = true";
        document.body.append(script);
      });
      const sent = await page.evaluate(() =>
        fetch("https://elsewhere.invalid/", { mode: "no-cors" }).then(
          () => "sent",
          () => "refused",
        ),
      );
      assert.equal(sent, "refused");
      assert.equal(await page.evaluate(() => "ran" in globalThis), false);
      const stopped = await page.evaluate(() => violations.map((v) => v.split(" ")[0]));
      assert.deepEqual(stopped.sort(), ["connect-src", "script-src-elem"]);
    }),
  );
}

check("a title with markup in it is shown as text and runs nothing", () =>
  onSite("plain", async (context, site) => {
    const page = await context.newPage();
    await countViolations(page);
    await visit(page, site.url);
    const title = `<img src=x onerror="globalThis.ran = true"><script>globalThis.ran = true</script>`;
    await openNew(page, "job");
    await type(page, "job", "title", title);
    await page.evaluate(() => gaugewright.host.flush());
    await page.getByText(title, { exact: false }).waitFor();
    assert.equal(await page.evaluate(() => "ran" in globalThis), false);
    assert.equal(await page.evaluate(() => document.querySelectorAll("#app img, #app script").length), 0);
    assert.deepEqual(await page.evaluate(() => violations), []);
  }),
);
