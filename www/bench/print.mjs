// How the bench prints: a figure a row, its budget beside it.
import { availableParallelism, loadavg } from "node:os";

export function row(what, figure, budget = "-") {
  console.log(`${what.padEnd(78)}  ${String(figure).padStart(14)}  ${budget}`);
}

/** How the rows below were measured. */
export function how(text) {
  console.log(`(${text})`);
}

/** What else the machine is doing: figures in time are worth little beside other work. */
export function howBusy() {
  how(`processors: ${availableParallelism()}; load of the last minute: ${loadavg()[0].toFixed(1)}`);
}

/** Runs one part; what it throws becomes a row, so that the other parts are still measured. */
export async function measured(what, work) {
  try {
    await work();
  } catch (problem) {
    row(what, "not measured", String(problem.message).split("\n")[0]);
  }
}

export function median(numbers) {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? NaN;
}

export const seconds = (ms) => (ms / 1000).toFixed(2);
export const milli = (ms) => ms.toFixed(1);
export const mebibytes = (bytes) => (bytes / 2 ** 20).toFixed(1);
export const times = (ratio) => `${ratio.toFixed(1)} times`;

/** What `work` takes [ms], and what it returns. */
export function timed(work) {
  const began = performance.now();
  const result = work();
  return { took: performance.now() - began, result };
}
