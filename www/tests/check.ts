// A test that cannot hang: a browser that never answers is a failure.
import { test } from "node:test";

export function check(name: string, work: () => Promise<void>, timeout = 90_000): void {
  void test(name, { timeout }, work);
}
