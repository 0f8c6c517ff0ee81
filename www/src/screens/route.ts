// Where the page is. The address after # holds it, so the device's own back
// button works; "#/pile/<doc>/<id>" is the path ["pile", doc, id].
import { signal } from "@preact/signals-core";

export const route = signal<readonly string[]>(read());

/** How many steps back stay inside the page. */
let depth = depthOf(history.state);

export function link(...parts: string[]): string {
  return "#/" + parts.map(encodeURIComponent).join("/");
}

export function go(...parts: string[]): void {
  location.hash = link(...parts);
}

/** Replaces the present place: the back button does not return to it. */
export function replace(...parts: string[]): void {
  history.replaceState({ depth }, "", link(...parts));
  route.value = read();
}

export function back(): void {
  if (depth > 0) history.back();
  else replace();
}

export function watchRoute(): void {
  history.scrollRestoration = "manual";
  addEventListener("hashchange", () => {
    const state: unknown = history.state;
    if (hasDepth(state)) depth = state.depth;
    else history.replaceState({ depth: ++depth }, "");
    places.set(at, scrollY);
    at = depth;
    route.value = read();
    arrived = places.get(depth) !== undefined && hasDepth(state) ? (places.get(depth) as number) : 0;
  });
  if (!hasDepth(history.state)) history.replaceState({ depth }, "");
  addEventListener("scroll", () => places.set(at, scrollY), { passive: true });
}

const places = new Map<number, number>();
let at = depth;
let arrived = 0;

/** Where the page stood when this place was left. */
export function placeOf(): number {
  return arrived;
}

function read(): readonly string[] {
  const parts = location.hash.replace(/^#\/?/, "").split("/").filter((p) => p !== "");
  return parts.map((part) => {
    try {
      return decodeURIComponent(part);
    } catch {
      return part;
    }
  });
}

function hasDepth(state: unknown): state is { depth: number } {
  return typeof state === "object" && state !== null && "depth" in state;
}

function depthOf(state: unknown): number {
  return hasDepth(state) ? state.depth : 0;
}
