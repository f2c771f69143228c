import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { shownName } from "../../../src/app/parts/shownName";

test.each([
  ["Ada  Hill ", "Ada Hill"],
  ["Наталья", "Наталья"],
  ["שרה (2)", "\u2068שרה (2)\u2069"],
  ["Ward محمد", "\u2068Ward محمد\u2069"],
  ["\u202Eevil", "\uFFFDevil"],
  ["\u2069שרה\u2068", "\u2068\uFFFDשרה\uFFFD\u2069"],
])("%j is shown as %j", (name, shown) => {
  expect(shownName(name)).toBe(shown);
});

/** Compares what is typed with the name, letter by letter. */
const ALLOWED = ["ErasePerson.tsx"];

test.each(["school", "classroom"])("every name in the room %s is shown so", (room) => {
  const folder = join("src/app", room);
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((file) => /\.tsx?$/.test(file));
  const others = files.filter((file) => readFileSync(join(folder, file), "utf8").includes("harmlessName"));
  expect(others.filter((file) => !ALLOWED.some((one) => file.endsWith(one)))).toEqual([]);
});
