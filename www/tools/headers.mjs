// Reads the edge's header file: a path on its own line, headers indented below
// it. `*` in a path stands for anything; all rules that fit are applied.

export function parseHeaders(text) {
  const rules = [];
  for (const line of text.split("\n")) {
    if (line.trim() === "" || line.startsWith("#")) continue;
    if (/^\s/.test(line)) {
      const colon = line.indexOf(":");
      if (colon < 0 || rules.length === 0) throw new Error(`header file: cannot read "${line.trim()}"`);
      rules.at(-1).headers.push([line.slice(0, colon).trim(), line.slice(colon + 1).trim()]);
    } else {
      const parts = line.trim().split("*").map((part) => part.replace(/[.+?^${}()|[\]\\]/g, "\\$&"));
      rules.push({ path: new RegExp(`^${parts.join(".*")}$`), headers: [] });
    }
  }
  return rules;
}

/** The headers of one path; a name given twice is joined with a comma, as the edge does. */
export function headersFor(rules, path) {
  const found = new Map();
  for (const rule of rules) {
    if (!rule.path.test(path)) continue;
    for (const [name, value] of rule.headers) {
      const key = name.toLowerCase();
      found.set(key, found.has(key) ? `${found.get(key)}, ${value}` : value);
    }
  }
  return found;
}
