// The script of reset.html: drops the stored program (caches and service
// workers). IndexedDB, where the jobs are, is not touched.
import { dropProgram } from "./dropprogram.ts";

const button = document.getElementById("reset") as HTMLButtonElement;
const done = document.getElementById("done") as HTMLElement;

button.addEventListener("click", () => {
  button.disabled = true;
  dropProgram().then(
    () => {
      done.textContent = "Done. The next visit of the page fetches the program anew; it needs the network once.";
    },
    (problem: unknown) => {
      button.disabled = false;
      done.textContent = `This did not work: ${String(problem)}`;
    },
  );
});
