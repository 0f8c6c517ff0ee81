// The host's own refusals, in the form of the core's answers.
import type { HostCode, Reply } from "../protocol.ts";

export function refusal(n: number, code: HostCode, says: string): Reply {
  return { n, text: JSON.stringify({ ok: false, code, says }) };
}
