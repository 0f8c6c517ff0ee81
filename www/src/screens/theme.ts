// Light or dark, by choice: the page does not change by itself with the device.
import { signal } from "@preact/signals-core";

export type Theme = "light" | "dark";

const name = "gaugewright theme";

export const theme = signal<Theme>("light");

export function restoreTheme(): void {
  let stored: string | null = null;
  try {
    stored = localStorage.getItem(name);
  } catch {
    // Storage is refused: the choice holds until the page is closed.
  }
  show(stored === "dark" ? "dark" : "light");
}

export function setTheme(next: Theme): void {
  show(next);
  try {
    localStorage.setItem(name, next);
  } catch {
    // As above.
  }
}

function show(next: Theme): void {
  theme.value = next;
  document.documentElement.dataset["theme"] = next;
  document.querySelector('meta[name="theme-color"]')?.setAttribute("content", next === "dark" ? "#000000" : "#ffffff");
}
