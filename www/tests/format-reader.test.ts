// Job files read by a second reader, written from examples/FORMAT.md: digests,
// folds, open choices and layout are those of the core, and the canonical form
// is that of a canonicaliser from npm.
import assert from "node:assert/strict";
import { readFileSync, readdirSync } from "node:fs";
import { basename, join } from "node:path";
import { test } from "node:test";
import canonicalize from "canonicalize";
import { canonical, choices, digest, fold, laidOut, linesOf, merged, read } from "./reader.ts";

const root = join(process.env["WWW"] ?? process.cwd(), "..");
const golden = join(root, "testdata", "golden");
const files = [join(root, "examples"), golden].flatMap((folder) =>
  readdirSync(folder).filter((name) => name.endsWith(".json")).map((name) => join(folder, name)),
);

test("there are job files to read", () => assert.ok(files.length >= 3));

for (const path of files) {
  const name = basename(path, ".json");
  const text = readFileSync(path, "utf8");
  const file = read(text);

  test(`${name}: digests, fold and open choices are those of the core`, () => {
    const kept = readFileSync(join(golden, `${name}.digest`), "utf8");
    const open = choices(file).map(({ path, options }) => `open ${options.length} ${path}\n`);
    assert.equal(`file ${digest(file)}\nnow ${digest(file["now"]!)}\nfold ${digest(fold(file))}\n${open.join("")}`, kept);
  });

  test(`${name}: the canonical form is that of a canonicaliser from npm`, () => {
    assert.equal(canonical(file), canonicalize(file));
  });

  test(`${name}: the layout is the one that the page describes`, () => {
    assert.equal(laidOut(file), text);
  });

  test(`${name}: every line has as many words as its record has columns`, () => {
    for (const { line, columns, where } of linesOf(file)) assert.equal(line.split(" ").length, columns, `${where}: ${line}`);
  });
}

// Cases of RFC 7396, appendix A, from memory: the reader's own merge is right.
test("the reader merges as RFC 7396 says", () => {
  assert.deepEqual(merged({ a: "b", c: { d: "e", f: "g" } }, { a: "z", c: { f: null } }), { a: "z", c: { d: "e" } });
  assert.deepEqual(merged({ a: [1, 2] }, { a: { b: "c" } }), { a: { b: "c" } });
  assert.deepEqual(merged({}, { a: { bb: { ccc: null } } }), { a: { bb: {} } });
  assert.deepEqual(merged({ e: null }, { a: 1 }), { e: null, a: 1 });
  assert.deepEqual(merged({ a: "foo" }, "bar"), "bar");
});
