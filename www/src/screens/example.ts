// The example job: one tap, and its piles are there.
import * as files from "../files.ts";
import { label } from "./labels.ts";
import { notice } from "./notice.ts";
import { opened } from "./opened.ts";

let opening = false;

export async function openExample(): Promise<void> {
  if (opening) return;
  opening = true;
  try {
    const all = await files.examples();
    const name = Object.keys(all).sort()[0];
    if (name === undefined) {
      notice.value = label("example.none");
      return;
    }
    await opened(await files.openText(all[name] as string));
  } catch (problem) {
    notice.value = problem instanceof Error ? problem.message : String(problem);
  } finally {
    opening = false;
  }
}
