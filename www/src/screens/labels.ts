// Words of the page. They come from the core's catalogue; a key without words
// shows itself, so that a gap is seen at once.
import catalogue from "../gen/labels.json";

const words = catalogue as Record<string, string>;

/** The words of a key. `{name}` in them is replaced by the value of that name. */
export function label(key: string, values: Record<string, string> = {}): string {
  return fill(words[key] ?? key, values);
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
