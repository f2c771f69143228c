import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";

const TESTS = join(import.meta.dirname, "..");

const references = readdirSync(TESTS, { recursive: true, encoding: "utf8" }).filter((file) =>
  file.endsWith(".reference.test.ts"),
);

// A reference test stands on something outside: a published value with its source, or a judge that shares no code.
describe("every reference test names its source or its independent judge", () => {
  test.each(references)("%s", (file) => {
    const text = readFileSync(join(TESTS, file), "utf8");
    expect(text).toMatch(/\.source\}|\/\/ .*[Jj]udge|judge from/);
    expect(text).toMatch(/shared\/published|jstat|rigidBody|stepwisePack/);
  });

  test("there are some", () => {
    expect(references.length).toBeGreaterThan(10);
  });
});
