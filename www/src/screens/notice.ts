// One sentence for the band on top, such as where a file went.
import { signal } from "@preact/signals-core";

export const notice = signal("");
