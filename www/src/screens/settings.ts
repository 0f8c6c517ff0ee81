// Settings of this device.
import { html, type TemplateResult } from "lit-html";
import { offlineReady, persisted } from "../signals.ts";
import * as offline from "../offline.ts";
import { frame } from "./frame.ts";
import { whoField } from "./keep.ts";
import { label } from "./labels.ts";
import { setTheme, theme, type Theme } from "./theme.ts";

export function settingsScreen(): TemplateResult {
  const choice = (value: Theme) => html`<button type="button" class="choice" aria-pressed=${theme.value === value ? "true" : "false"} @click=${() => setTheme(value)}>
    <svg class="tick" width="18" height="18" viewBox="0 0 18 18" aria-hidden="true"><circle cx="9" cy="9" r="7.5"></circle><circle class=${theme.value === value ? "dot" : "no-dot"} cx="9" cy="9" r="4"></circle></svg
    >${label(`settings.${value}`)}
  </button>`;
  return frame({
    name: "settings",
    title: label("nav.settings"),
    body: html`<section>
        <h2>${label("settings.theme")}</h2>
        <div class="choices" role="group" aria-label=${label("settings.theme")}>${choice("light")} ${choice("dark")}</div>
      </section>
      <section>
        <h2>${label("settings.person")}</h2>
        ${whoField()}
      </section>
      <section>
        <h2>${label("settings.device")}</h2>
        <p>${label(offlineReady.value ? "settings.offline" : "settings.notoffline")}</p>
        <p>${label(persisted.value === true ? "settings.persisted" : "settings.notpersisted")}</p>
        <div class="acts">
          <button type="button" @click=${() => void offline.askForUpdate()}>${label("settings.update")}</button>
          <a class="button" href="reset.html">${label("settings.reset")}</a>
        </div>
      </section>`,
  });
}
