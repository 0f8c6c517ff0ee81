// The content security policy, once as header and once as <meta>.
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

export const policyMeta = directives.join("; ");

// A <meta> policy may not carry frame-ancestors; the header does.
export const policyHeader = [...directives, "frame-ancestors 'none'"].join("; ");

/**
 * The edge's header file. Where several rules name one header the edge joins
 * the values with a comma, so no path may meet two rules for Cache-Control.
 */
export function headersFile() {
  const noCache = ["/", "/index.html", "/sw.js", "/version.json"];
  return [
    "/*",
    `  Content-Security-Policy: ${policyHeader}`,
    "  X-Content-Type-Options: nosniff",
    "  Referrer-Policy: no-referrer",
    "  Cross-Origin-Opener-Policy: same-origin",
    "  Cross-Origin-Resource-Policy: same-origin",
    "  Permissions-Policy: camera=(), geolocation=(), microphone=(), payment=(), usb=()",
    "",
    "/a/*",
    "  Cache-Control: public, max-age=31536000, immutable",
    ...noCache.flatMap((path) => ["", path, "  Cache-Control: no-cache"]),
    "",
  ].join("\n");
}
