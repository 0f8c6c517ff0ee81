// With the keyboard open little height is left: readings then become a band.
const shortBelow = 460;

export function watchHeight(): void {
  const glass = window.visualViewport;
  const look = () => {
    const root = document.documentElement;
    root.classList.toggle("short", (glass?.height ?? innerHeight) < shortBelow);
    // Where the keyboard lies over the page instead of shrinking it, the band follows the glass.
    root.style.setProperty("--glass-top", `${glass?.offsetTop ?? 0}px`);
  };
  glass?.addEventListener("resize", look);
  glass?.addEventListener("scroll", look);
  addEventListener("resize", look);
  look();
}
