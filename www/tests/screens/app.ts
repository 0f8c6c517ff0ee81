// The plainest screens, for the tests of the platform: they show the state and the
// documents on this device, and open and save files.
import { effect } from "@preact/signals-core";
import { html, render } from "lit-html";
import * as files from "../../src/files.ts";
import * as signals from "../../src/signals.ts";

export function startScreens(root: HTMLElement): void {
  root.replaceChildren();
  effect(() => {
    render(page(), root);
  });
}

function page() {
  const core = signals.core.value;
  return html`<main>
    <h1>Gaugewright</h1>
    <p id="state" role="status">${core.state}${"why" in core ? `: ${core.why}` : ""}</p>
    ${signals.readOnly.value ? html`<p>Another tab is editing; this one only shows.</p>` : null}
    <ul>
      ${[...signals.docs.value.values()].map(
        (info) =>
          html`<li>
            ${info.title || info.doc}
            <button type="button" @click=${() => files.sendOut(info.doc, { share: false })}>Save file</button>
          </li>`,
      )}
    </ul>
    <button type="button" @click=${() => files.openPicked()}>Open a file</button>
  </main>`;
}
