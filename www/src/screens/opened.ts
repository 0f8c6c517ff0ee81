// What happens with a file that has come in: it opens, or says why not, or is
// known on this device already and waits for a decision.
import { signal } from "@preact/signals-core";
import type { Opened } from "../files.ts";
import { ask } from "./data.ts";
import { go } from "./route.ts";
import { workOn } from "./sizingstate.ts";
import { isSizing, type Complaint, type Info } from "./views.ts";

/** The last file that came in. */
export const incoming = signal<{
  doc: string;
  title: string;
  ok: boolean;
  says: string;
  complaints: Complaint[];
  count: number;
  known: string[];
  /** The job's id, and the file as it came: what is needed to put it together with a copy here. */
  job: string;
  bytes: Uint8Array;
} | null>(null);

export async function opened(result: Opened | null): Promise<void> {
  if (result === null) return;
  const { answer, doc, known, bytes } = result;
  const complaints = (answer["complaints"] as unknown as Complaint[] | undefined) ?? [];
  const title = typeof answer["title"] === "string" ? answer["title"] : "";
  const count = typeof answer["complaintCount"] === "number" ? answer["complaintCount"] : complaints.length;
  incoming.value = { doc, title, ok: answer.ok, says: answer.says ?? "", complaints, count, known: known ?? [], job: typeof answer["job"] === "string" ? answer["job"] : "", bytes };
  if (!answer.ok || complaints.length > 0 || (known ?? []).length > 0) go("incoming");
  else await lookAt(doc);
}

/** Goes to the first sight of a document: a sizing to the first screen, a job to its piles. */
export async function lookAt(doc: string): Promise<void> {
  const info = await ask<Info>(doc, "info");
  if (info.ok && isSizing(info)) {
    workOn(doc);
    go();
  } else go("piles", doc);
}
