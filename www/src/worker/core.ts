// One life of the Go core: start, call. A core that has failed in any
// way is never called again; the caller throws it away and starts another.
import "wasm-exec";

export interface CoreAnswer {
  text: string;
  bytes?: Uint8Array;
}

export interface Core {
  /** The words of screens that need a running core, a JSON text. */
  labels: string;
  call(request: string, bytes?: Uint8Array): CoreAnswer;
}

/** The core is gone: it trapped, ran out of stack, ended, or owned up to a fault. */
export class CoreDied extends Error {}

type Call = (request: string, bytes?: Uint8Array) => { answer: string; bytes?: Uint8Array } | undefined;

/** Figures for the bench: how long the last calls took [ms], and what memory the core holds [B]. */
export const figures = { calls: [] as number[], memory: () => 0 };
const callsKept = 500;

/** Starts the core. `onEnd` is called if the Go program ends, which it never should. */
export async function startCore(module: WebAssembly.Module, onEnd: () => void): Promise<Core> {
  delete (globalThis as { gaugewright?: unknown }).gaugewright;
  const go = new Go();
  // Linear memory never shrinks, so garbage is collected early: a job of 20 MB
  // stays within 96 MiB that way, at a cost that a key press does not feel.
  go.env = { GOGC: "50", GOMEMLIMIT: "72MiB" };
  const instance = await WebAssembly.instantiate(module, go.importObject);
  go.run(instance).then(onEnd, onEnd);
  figures.memory = () => (instance.exports["mem"] as WebAssembly.Memory).buffer.byteLength;
  const { call, labels = "{}" } = (globalThis as { gaugewright?: { call: Call; labels?: string } }).gaugewright ?? {};
  if (!call || go.exited) throw new CoreDied("the calculation did not start");
  return {
    labels,
    call(request, bytes) {
      let result;
      const began = performance.now();
      try {
        result = call(onDay(request), bytes);
      } catch (problem) {
        throw new CoreDied(`the calculation stopped: ${String((problem as Error)?.message ?? problem)}`);
      }
      figures.calls.push(performance.now() - began);
      if (figures.calls.length > callsKept) figures.calls.shift();
      if (go.exited || typeof result?.answer !== "string") throw new CoreDied("the calculation stopped");
      const fault = faultIn(result.answer);
      if (fault !== null) throw new CoreDied(fault);
      return result.bytes ? { text: result.answer, bytes: result.bytes } : { text: result.answer };
    },
  };
}

/** The request with the day on this device, YYYY-MM-DD, by which certificates hold. */
function onDay(request: string): string {
  const now = new Date();
  const day = new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
  return `${request.slice(0, -1)},"day":"${day}"}`;
}

/** The words of an answer with "fault": true; null for every other answer. */
function faultIn(text: string): string | null {
  if (!text.startsWith('{"ok":false') || !text.includes('"fault"')) return null;
  const answer = JSON.parse(text) as { fault?: boolean; says?: string };
  return answer.fault === true ? (answer.says ?? "the calculation reported a fault") : null;
}
