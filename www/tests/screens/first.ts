// The first screen as it stands in the HTML, before any script has run.

export function firstScreen(labels: Record<string, string>): string {
  return `<main><h1>${labels["app.name"] ?? "Gaugewright"}</h1><p>starting</p></main>`;
}
