// The screens: which one the address names, and the drawing of it.
import { effect } from "@preact/signals-core";
import { html, nothing, render, type TemplateResult } from "lit-html";
import { core, epoch } from "../signals.ts";
import { aboutScreen } from "./about.ts";
import { asideScreen } from "./aside.ts";
import { bringScreen } from "./bring.ts";
import { bringColumnsScreen } from "./bringcolumns.ts";
import { bringRowsScreen } from "./bringrows.ts";
import { watchTable } from "./bringstate.ts";
import { cardScreen } from "./card.ts";
import { choicesScreen } from "./choices.ts";
import { watchDrops } from "./come.ts";
import { compareScreen } from "./compare.ts";
import { convertScreen } from "./convert.ts";
import { typingBeforeStart } from "./early.ts";
import { openExample } from "./example.ts";
import { fleetScreen } from "./fleet.ts";
import { formScreen } from "./form.ts";
import { handOutScreen } from "./handout.ts";
import { historyScreen } from "./history.ts";
import { incomingScreen } from "./incoming.ts";
import { jobScreen, jobsScreen } from "./jobs.ts";
import { joinedScreen } from "./joined.ts";
import { keepScreen } from "./keep.ts";
import { label } from "./labels.ts";
import { limitsScreen } from "./limits.ts";
import { screens, type ScreenName } from "./list.ts";
import { moreScreen } from "./more.ts";
import { pasteScreen } from "./paste.ts";
import { rigPicker, typePicker } from "./picker.ts";
import { pileScreen } from "./pile.ts";
import { pilesScreen } from "./piles.ts";
import { planScreen } from "./plan.ts";
import { placeOf, replace, route, watchRoute } from "./route.ts";
import { sheetScreen } from "./sheet.ts";
import { settingsScreen } from "./settings.ts";
import { firstScreen, pileSizing } from "./sizing.ts";
import { current, lookForLast, looked, offered } from "./sizingstate.ts";
import { restoreTheme } from "./theme.ts";
import { watchTrial } from "./trial.ts";
import { keepBoxSeen, watchHeight } from "./viewport.ts";
import { workingScreen } from "./working.ts";

export { screens } from "./list.ts";

const drawn: Record<ScreenName, (...parts: string[]) => TemplateResult> = {
  "": firstScreen,
  size: (doc = "", pile = "") => pileSizing(doc, pile),
  "pick-rig": (doc, pile) => rigPicker(doc, pile),
  "pick-pile": (doc, pile) => typePicker(doc, pile),
  limits: (doc = "", pile) => limitsScreen(doc, pile),
  form: (doc = "", path = "") => formScreen(doc, path),
  piles: (doc = "", page) => pilesScreen(doc, page === undefined ? undefined : pageOf(page)),
  plan: (doc = "") => planScreen(doc),
  fleet: (doc = "", page = "0") => fleetScreen(doc, pageOf(page)),
  bring: (doc = "") => bringScreen(doc),
  "bring-rows": (doc = "", page = "0") => bringRowsScreen(doc, pageOf(page)),
  "bring-columns": (doc = "") => bringColumnsScreen(doc),
  "hand-out": (doc = "") => handOutScreen(doc),
  sheet: (doc = "", name = "", page = "0", of) => sheetScreen(doc, name, pageOf(page), of),
  pile: (doc = "", pile = "") => pileScreen(doc, pile),
  working: (doc = "", step = "", pile) => workingScreen(doc, step, pile),
  convert: (doc = "", pile) => convertScreen(doc, pile),
  card: (doc = "", pile = "") => cardScreen(doc, pile),
  more: moreScreen,
  jobs: jobsScreen,
  job: (doc = "") => jobScreen(doc),
  incoming: incomingScreen,
  joined: (doc = "") => joinedScreen(doc),
  choices: (doc = "") => choicesScreen(doc),
  history: (doc = "", path = "/now", page = "0") => historyScreen(doc, path, pageOf(page)),
  compare: (doc = "", from, to) => compareScreen(doc, from, to),
  paste: pasteScreen,
  keep: (doc = "") => keepScreen(doc),
  aside: asideScreen,
  settings: settingsScreen,
  about: aboutScreen,
};

export function startScreens(root: HTMLElement): void {
  restoreTheme();
  watchRoute();
  watchHeight();
  watchDrops();
  watchTrial();
  watchTable();
  const resume = typingBeforeStart(root);
  root.replaceChildren();
  let last: readonly string[] | undefined;
  effect(() => {
    const now = route.value;
    // A plain link, so that it works before the script does; it is no place to stay at.
    if (now[0] === "example") {
      replace();
      void openExample();
      return;
    }
    const moved = last !== undefined && last !== now;
    // A new place is drawn from nothing, so that nothing of the old one stays in a box.
    if (moved) render(nothing, root);
    last = now;
    render(screenOf(now), root);
    if (moved) arrive();
    else keepBoxSeen();
  });
  resume();
  void lookForLast();
  effect(() => {
    if (epoch.value > 0 && core.value.state === "ready" && looked.value && current.value === null && offered.value === null) void lookForLast();
  });
}

function screenOf([name = "", ...parts]: readonly string[]): TemplateResult {
  const known = screens.find((one) => one === name);
  return known === undefined ? html`${drawn[""]()}` : html`${drawn[known](...parts)}`;
}

/** Stands where this place was left, or at its top, with the title read out. */
function arrive(): void {
  scrollTo(0, placeOf());
  const title = document.getElementById("title");
  title?.focus({ preventScroll: true });
  document.title = `${title?.textContent ?? ""}, ${label("app.name")}`;
}

/** Page numbers in an address are digits only. */
function pageOf(text: string): number {
  return /^\d{1,6}$/.test(text) ? parseInt(text, 10) : 0;
}
