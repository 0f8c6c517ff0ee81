// The first screen as it stands in the HTML, before any script has run: the
// same markup as sizing.ts gives while nothing is answered, so nothing jumps.

export function firstScreen(labels: Record<string, string>): string {
  const word = (key: string) => escaped(labels[key] ?? key);
  const typed = (id: string) => `<div class="row typed">
<label for="row-${id}">${word(`row.${id}`)}</label>
<span class="echo" id="row-${id}-echo"></span>
<div class="entry"><input id="row-${id}" class="box" type="text" inputmode="decimal" autocomplete="off" autocapitalize="off" spellcheck="false" enterkeyhint="done" aria-describedby="row-${id}-echo row-${id}-problem" aria-invalid="false"><span></span></div>
<div class="problem" id="row-${id}-problem" aria-live="polite"></div>
</div>`;
  const opening = (id: string, place: string) => `<a class="row opening" href="#/${place}"><span class="row-label">${word(`row.${id}`)}</span>
<span class="row-says need">${word("row.choose")}</span><svg class="chevron" width="12" height="20" viewBox="0 0 12 20" aria-hidden="true"><path d="M2 2L10 10L2 18"></path></svg></a>`;
  return `<div class="page sizing">
<header class="head">
<div class="head-title"><h1 id="title" tabindex="-1">${word("reading.set")}</h1></div>
<a class="button" href="#/example">${word("nav.example")}</a>
<a class="button" href="#/more">${word("nav.more")}</a>
</header>
<main class="main">
<section class="reading" aria-label="${word("reading.title")}" aria-live="polite"><p class="large">${word("core.starting")}</p></section>
<div class="rows">
${typed("load")}
${typed("factor")}
${opening("rig", "pick-rig")}
${opening("pile", "pick-pile")}
<div class="row idle"><span class="row-label">${word("row.limits")}</span> <span class="row-says need">${word("row.none")}</span></div>
</div>
</main>
<footer class="status none" role="status"></footer>
</div>`;
}

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (c) => `&#${c.charCodeAt(0)};`);
}
