import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

const SRC = join(import.meta.dirname, "../../src");

/** Words made elsewhere and then cut, mended or filled by hand: data is wanted first, and each wording made from it. */
const CUTS = [
  // An end taken off, and another put there.
  /\$\{[\w.]+\.slice\(0, -1\)\}/,
  /\b(?:sentence|words|say|says|unit)\.slice\(/,
  // A word of it exchanged, or a place in it filled; an address is no sentence.
  /(?<!location)\.replace\("[^"]*[A-Za-z#][^"]*"/,
  // A number read out of it.
  /\/\^[a-z]+ \(\\d/,
];

const cuts = (text: string) => CUTS.some((one) => one.test(text));

test("no sentence is cut to make another of it", () => {
  const found = readdirSync(SRC, { recursive: true, encoding: "utf8" }).filter(
    (file) => /\.tsx?$/.test(file) && cuts(readFileSync(join(SRC, file), "utf8")),
  );
  expect(found).toEqual([]);
});

test.each([
  `rules.consecutive ? \`\${words.slice(0, -1)}; the side starts again.\` : words`,
  "small(sentence.slice(0, -1))",
  "Number(amount) === 1 ? unit.slice(0, -1) : unit",
  'STATE_WORDS[state].replace("#", String(number + 1))',
  'exercise.replace("first 1", "first number")',
  'rangeText(interval).replace(" to ", " and ")',
  "/^first (\\d)$/.exec(exercise)",
])("a planted one is found: %s", (text) => {
  expect(cuts(text)).toBe(true);
});

test.each([
  'names.slice(0, -1).join(", ")',
  'text.replace(",", ".")',
  'location.replace("#/sittings")',
  "/^(\\d{4})-(\\d\\d)$/.exec(text)",
])("this is none: %s", (text) => {
  expect(cuts(text)).toBe(false);
});
