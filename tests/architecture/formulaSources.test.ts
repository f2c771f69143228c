import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";

const FOLDER = "src/fitting/geometry";

/** What a function does its sums by: geometry, another function, a published work, or what the trade does. */
const SOURCE = /^ \* Source: (geometry: [a-z]|common practice, no source|`\w+`, |[A-Z0-9][\w.]* [A-Z][\w.]*)/m;

/** Exported functions of a text whose docstring names no source. */
function withoutSource(text: string): readonly string[] {
  const exported = /(?:\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\n)?export (?:const (\w+) = (?:\(|<)|function (\w+))/g;
  return [...text.matchAll(exported)]
    .filter(([, docstring = ""]) => !SOURCE.test(docstring))
    .map(([, , constant, named]) => constant ?? named ?? "");
}

describe("formulas of the fitting's geometry", () => {
  test.each(readdirSync(FOLDER))("%s: every function names its source", (file) => {
    expect(withoutSource(readFileSync(join(FOLDER, file), "utf8"))).toEqual([]);
  });

  test("a function without one would be found", () => {
    const sourced = "/**\n * Sum.\n *\n * Source: geometry: a sum.\n */\nexport const sum = (a: number) => a;\n";
    expect(withoutSource(sourced)).toEqual([]);
    expect(withoutSource(sourced.replace("geometry: a sum", "?"))).toEqual(["sum"]);
    expect(withoutSource(`${sourced}/** Half. */\nexport function half(a: number) {}\n`)).toEqual(["half"]);
    expect(withoutSource(`${sourced}export const bare = (a: number) => a;\n`)).toEqual(["bare"]);
  });
});
