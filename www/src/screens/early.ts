// What was typed into the static first screen before the script ran.
import { typeEarly } from "./sizingstate.ts";

/** Takes up what stands in the static boxes; the returned function gives the focus back. */
export function typingBeforeStart(root: HTMLElement): () => void {
  const focused = document.activeElement?.id ?? "";
  for (const row of ["load", "factor"]) {
    const box = root.querySelector<HTMLInputElement>(`#row-${row}`);
    if (box && box.value !== "") typeEarly(row, box.value);
  }
  return () => {
    const box = focused === "" ? null : document.getElementById(focused);
    if (!(box instanceof HTMLInputElement)) return;
    box.focus({ preventScroll: true });
    box.setSelectionRange(box.value.length, box.value.length);
  };
}
