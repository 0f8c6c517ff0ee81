// The HTML pages. No inline script and no inline style: the policy refuses both.
import { policyMeta } from "./policy.mjs";

/** Text as HTML text or as the value of a quoted attribute. */
export function escaped(text) {
  return text.replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`);
}

function head(title) {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policyMeta}">
<meta name="viewport" content="width=device-width, initial-scale=1, interactive-widget=resizes-content">
<meta name="color-scheme" content="light">
<title>${escaped(title)}</title>`;
}

/**
 * The page. `first` is the first screen as plain HTML, so that the first thing
 * seen needs no script; the script takes the place of it once it runs.
 */
export function indexHTML({ title, description, css, js, icon, touchIcon, manifest, first }) {
  return `${head(title)}
<meta name="description" content="${escaped(description)}">
<meta name="theme-color" content="#ffffff">
<link rel="stylesheet" href="${css}">
<link rel="icon" href="${icon}" type="image/svg+xml">
<link rel="apple-touch-icon" href="${touchIcon}">
<link rel="manifest" href="${manifest}">
<script type="module" src="${js}"></script>
</head>
<body>
<div id="app">${first}</div>
<noscript><p>This page calculates on your own device and needs JavaScript for it.</p></noscript>
</body>
</html>
`;
}

/** The way out when a stored version of the code is broken: it drops code, never jobs. */
export function resetHTML({ js }) {
  return `${head("Gaugewright: fetch the program anew")}
<meta name="robots" content="noindex">
<script type="module" src="${js}"></script>
</head>
<body>
<main>
<h1>Fetch the program anew</h1>
<p>This drops the stored copy of the program from this device and fetches it again from the network.
Your jobs, rigs and pile types stay on this device.</p>
<p><button id="reset" type="button">Drop the stored program</button></p>
<p id="done" role="status"></p>
<p><a href="./">Back to the page</a></p>
</main>
</body>
</html>
`;
}

/** The manifest lies in a folder of its own, one below the page. */
export function manifest({ name, description, icon, small, large }) {
  return JSON.stringify(
    {
      name,
      short_name: name,
      description,
      id: "../",
      start_url: "../",
      scope: "../",
      display: "standalone",
      background_color: "#ffffff",
      theme_color: "#ffffff",
      icons: [
        { src: icon, sizes: "any", type: "image/svg+xml", purpose: "any" },
        { src: small, sizes: "192x192", type: "image/png" },
        { src: large, sizes: "512x512", type: "image/png" },
      ],
    },
    null,
    1,
  );
}
