// With the keyboard open little height is left: readings then become a band,
// and the box that is typed into stays in sight below it.
const shortBelow = 460;

export function watchHeight(): void {
  const glass = window.visualViewport;
  const look = () => {
    const root = document.documentElement;
    root.classList.toggle("short", (glass?.height ?? innerHeight) < shortBelow);
    // Where the keyboard lies over the page instead of shrinking it, the band follows the glass.
    root.style.setProperty("--glass-top", `${glass?.offsetTop ?? 0}px`);
    keepBoxSeen();
  };
  glass?.addEventListener("resize", look);
  glass?.addEventListener("scroll", look);
  addEventListener("resize", look);
  addEventListener("focusin", keepBoxSeen);
  look();
}

/** Scrolls the box in use out from under the band. */
export function keepBoxSeen(): void {
  const box = document.activeElement;
  if (!(box instanceof HTMLInputElement) || !document.documentElement.classList.contains("short")) return;
  const band = document.querySelector(".sizing .reading")?.getBoundingClientRect();
  const line = document.querySelector(".status")?.getBoundingClientRect();
  const row = (box.closest(".row, .field") ?? box).getBoundingClientRect();
  const top = (band?.bottom ?? 0) + 6;
  const bottom = (line?.top ?? innerHeight) - 6;
  if (row.top < top) scrollBy(0, row.top - top);
  else if (box.getBoundingClientRect().bottom > bottom) scrollBy(0, Math.min(row.top - top, box.getBoundingClientRect().bottom - bottom));
}
