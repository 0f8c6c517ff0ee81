// Words of the page. They come from the core's catalogue: some are brought along,
// those of screens that need a running core come from it. A key without words
// shows itself, so that a gap is seen at once; while the core starts it is blank.
import catalogue from "../gen/labels.json";
import { lateLabels } from "../signals.ts";

const words = catalogue as Record<string, string>;

/** The words of a key. `{name}` in them is replaced by the value of that name. */
export function label(key: string, values: Record<string, string> = {}): string {
  const late = lateLabels.value;
  return fill(words[key] ?? (late === null ? "" : (late[key] ?? key)), values);
}

export function fill(text: string, values: Record<string, string>): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => values[name] ?? whole);
}

/** The words of key.1, key.2 ... in order, as far as there are any. */
export function labelList(key: string): string[] {
  const list: string[] = [];
  for (let i = 1; words[`${key}.${i}`] !== undefined; i++) list.push(words[`${key}.${i}`] as string);
  return list;
}
