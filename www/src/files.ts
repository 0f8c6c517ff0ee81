// Jobs come in as files of any name, dropped or pasted, and leave as files:
// through the share sheet where there is one, else as a download or into a
// place the user chooses.
import { fileSave } from "browser-fs-access";
import * as host from "./host.ts";
import type { Full } from "./host.ts";
import { pickFile } from "./pick.ts";
import { core } from "./signals.ts";

export type Opened = Full & { doc: string; bytes: Uint8Array };

/** The user picks a file. No type is asked for: pickers grey out what they do not know. Null: nothing picked. */
export async function openPicked(): Promise<Opened | null> {
  const file = await pickFile();
  return file ? openBlob(file) : null;
}

export async function openBlob(blob: Blob): Promise<Opened> {
  return host.openFile(new Uint8Array(await blob.arrayBuffer()));
}

/** Pasted text: messengers and mail always carry text. */
export function openText(text: string): Promise<Opened> {
  return host.openFile(new TextEncoder().encode(text));
}

/** The example jobs by file name, as text. */
export async function examples(): Promise<Record<string, string>> {
  const response = await fetch(new URL(__EXAMPLES__, import.meta.url));
  if (!response.ok) throw new Error(`the examples could not be fetched (answer ${response.status})`);
  return (await response.json()) as Record<string, string>;
}

/**
 * Takes files dropped anywhere on the page. What `first` wants, by answering
 * true, is not opened as a job. Returns the function that stops it.
 */
export function acceptDrops(opened: (result: Promise<Opened>) => void, first: (file: File) => boolean = () => false): () => void {
  const over = (event: DragEvent) => {
    if (event.dataTransfer?.types.includes("Files")) event.preventDefault();
  };
  const drop = (event: DragEvent) => {
    const files = event.dataTransfer?.files;
    if (!files || files.length === 0) return;
    event.preventDefault();
    for (const file of files) if (!first(file)) opened(openBlob(file));
  };
  addEventListener("dragover", over);
  addEventListener("drop", drop);
  return () => {
    removeEventListener("dragover", over);
    removeEventListener("drop", drop);
  };
}

export interface Sent {
  /** "left": the file is safely out; "cancelled": the user stopped; "refused": see says. */
  how: "left" | "cancelled" | "refused";
  says?: string;
}

/**
 * Sends a job out as a file. Only when that has succeeded does the job count
 * as being in a file. `share: true` prefers the share sheet.
 */
export async function sendOut(doc: string, { share }: { share: boolean }): Promise<Sent> {
  const { answer, bytes, seq } = await fileOf(doc);
  if (!answer.ok || !bytes) return { how: "refused", says: answer.says ?? "The file could not be written." };
  const name = typeof answer.name === "string" ? answer.name : "job.json";
  const sent = await (share ? shareOrSave(bytes, name, jobType) : saveAs(bytes, name, jobType));
  if (sent.how === "left" && seq !== undefined) await host.filed(doc, seq);
  return sent;
}

/** The file from the core, or, where that does not run, the stored one with the entries added. */
async function fileOf(doc: string): Promise<Full> {
  if (core.value.state === "unavailable") return host.rawSave(doc);
  const saved = await host.save(doc);
  const failed = saved.answer.code === "core-unavailable" || saved.answer.code === "core-failed";
  return failed || saved.answer.code === "broken" ? host.rawSave(doc) : saved;
}

const jobType = "application/json";

/** Sends a table out as a file. It is no copy of the job. */
export function sendTable(bytes: Uint8Array, name: string, { share }: { share: boolean }): Promise<Sent> {
  return share ? shareOrSave(bytes, name, "text/csv") : saveAs(bytes, name, "text/csv");
}

async function shareOrSave(bytes: Uint8Array, name: string, type: string): Promise<Sent> {
  const file = shareable(bytes, name, type);
  if (!file) return saveAs(bytes, name, type);
  try {
    await navigator.share({ files: [file] });
    return { how: "left" };
  } catch (problem) {
    if (isAbort(problem)) return { how: "cancelled" };
    return saveAs(bytes, name, type);
  }
}

/** Some share sheets refuse JSON but take text; the name then gets a second ending. */
function shareable(bytes: Uint8Array, name: string, type: string): File | null {
  if (!navigator.canShare) return null;
  const forms = [new File([bytes as BlobPart], name, { type }), asText(bytes, name)];
  return forms.find((file) => navigator.canShare({ files: [file] })) ?? null;
}

function asText(bytes: Uint8Array, name: string): File {
  return new File([bytes as BlobPart], `${name}.txt`, { type: "text/plain" });
}

async function saveAs(bytes: Uint8Array, name: string, type: string): Promise<Sent> {
  const blob = new Blob([bytes as BlobPart], { type });
  try {
    await fileSave(blob, { fileName: name });
    return { how: "left" };
  } catch (problem) {
    if (isAbort(problem)) return { how: "cancelled" };
    return { how: "refused", says: problem instanceof Error ? problem.message : String(problem) };
  }
}

function isAbort(problem: unknown): boolean {
  return problem instanceof DOMException && problem.name === "AbortError";
}
