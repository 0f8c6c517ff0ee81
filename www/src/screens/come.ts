// Files coming in by picker and by drop.
import * as files from "../files.ts";
import { dropped } from "./bringstate.ts";
import { notice } from "./notice.ts";
import { opened } from "./opened.ts";

export async function pickFile(): Promise<void> {
  try {
    await opened(await files.openPicked());
  } catch (problem) {
    notice.value = problem instanceof Error ? problem.message : String(problem);
  }
}

export function watchDrops(): void {
  files.acceptDrops((result) => void result.then(opened, (problem: unknown) => (notice.value = String(problem))), dropped);
}
