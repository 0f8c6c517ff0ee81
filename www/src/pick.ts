/**
 * Lets the user pick a file of any kind; null when nothing was picked. The
 * input has no `accept` at all: some pickers grey out every file of a kind
 * they do not know, and an accept of "," counts as one.
 */
export function pickFile(): Promise<File | null> {
  return new Promise((done) => {
    const input = document.createElement("input");
    input.type = "file";
    // Some browsers forget an input that is not in the page.
    input.hidden = true;
    document.body.append(input);
    const end = (file: File | null) => {
      input.remove();
      done(file);
    };
    input.addEventListener("change", () => end(input.files?.[0] ?? null));
    input.addEventListener("cancel", () => end(null));
    input.click();
  });
}
