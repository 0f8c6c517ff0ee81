// The published JSON Schema under a validator from npm: it is a schema of draft
// 2020-12, takes every file that we write and refuses every spoiled file at the
// place where the core refuses it (calc/job, TestSpoiledFilesAreRefused).
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { Ajv2020, type ErrorObject } from "ajv/dist/2020.js";

const www = process.env["WWW"] ?? process.cwd();
const root = join(www, "..");
const schema = JSON.parse(readFileSync(join(www, "static", "job-1.schema.json"), "utf8")) as { $id: string };
const ajv = new Ajv2020({ allErrors: true, strict: true, strictTypes: false, strictRequired: false, allowUnionTypes: true });
const validate = ajv.compile(schema);

function parsed(folder: string, name: string): unknown {
  return JSON.parse(readFileSync(join(root, folder, name), "utf8"));
}

/** The place of an error as the core names it: that of what is missing, or misnamed. */
function placeOf(error: ErrorObject): string {
  const params = error.params as { missingProperty?: string; propertyName?: string };
  const below = params.missingProperty ?? params.propertyName;
  return below === undefined ? error.instancePath : `${error.instancePath}/${below.replaceAll("~", "~0").replaceAll("/", "~1")}`;
}

function errorsOf(value: unknown): ErrorObject[] {
  return validate(value) ? [] : (validate.errors ?? []);
}

test("the schema is one, and names no host as its own", () => {
  assert.equal(ajv.validateSchema(schema), true, JSON.stringify(ajv.errors));
  assert.equal(schema.$id, "urn:gaugewright:job:1");
});

for (const folder of ["examples", "testdata/golden"]) {
  for (const name of readdirSync(join(root, folder)).filter((one) => one.endsWith(".json"))) {
    test(`${folder}/${name} is taken`, () => assert.deepEqual(errorsOf(parsed(folder, name)), []));
  }
}

test("what the core writes of every example is taken", () => {
  for (const name of readdirSync(join(root, "examples")).filter((one) => one.endsWith(".json"))) {
    const input = readFileSync(join(root, "examples", name));
    const written = execFileSync("go", ["run", "./wasm/stdio", "format"], { cwd: root, input, encoding: "utf8" });
    assert.deepEqual(errorsOf(JSON.parse(written)), [], name);
  }
});

const table = readFileSync(join(root, "testdata", "spoiled", "table.tsv"), "utf8").split("\n")
  .filter((row) => row !== "" && !row.startsWith("#")).map((row) => row.split("\t") as [string, string, string]);

test("at least 40 spoiled files are refused at the place where the core refuses them", () => {
  assert.ok(table.length >= 40);
  assert.deepEqual(errorsOf(parsed("testdata/spoiled", "sound.json")), [], "the file they are spoiled from is sound");
  for (const [name, path] of table) {
    const places = errorsOf(parsed("testdata/spoiled", name)).map(placeOf);
    assert.ok(places.includes(path), `${name}: ${path} is not among ${places.join(" ")}`);
    for (const place of places) assert.ok(path === place || path.startsWith(`${place}/`), `${name}: ${place} is not spoiled`);
  }
});
