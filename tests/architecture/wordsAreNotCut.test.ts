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
  // A number read out of it, after any words.
  /\/\^\(?[a-z.+]+\)? \((?:-\?)?\\d/,
  // A part of a title, and a figure whose digits are taken off again.
  /\btitle\??\.(?:split|slice|replace|match)\(/,
  /Text\([^()]*\)\.replace\(\/0/,
];

/** Sizes read out of a text in which spaces part them: only where a stored format is both written and read. */
const SIZES_READ = /\.split\(" "\)(?:\.slice\(\d\))?\.map\(Number\)/;
const FORMATS = ["app/sittings/session/sittingShelf.ts", "realdial/wire/wireLine.ts", "records/conditionCode.ts"];

const cuts = (text: string) => CUTS.some((one) => one.test(text));

const filesWith = (isSuch: (text: string) => boolean) =>
  readdirSync(SRC, { recursive: true, encoding: "utf8" }).filter(
    (file) => /\.tsx?$/.test(file) && isSuch(readFileSync(join(SRC, file), "utf8")),
  );

test("no sentence is cut to make another of it", () => {
  expect(filesWith(cuts)).toEqual([]);
});

test("sizes are read out of a text by the formats that keep them so, and nowhere else", () => {
  expect(filesWith((text) => SIZES_READ.test(text)).sort()).toEqual(FORMATS);
});

test.each([
  `rules.consecutive ? \`\${words.slice(0, -1)}; the side starts again.\` : words`,
  "small(sentence.slice(0, -1))",
  "Number(amount) === 1 ? unit.slice(0, -1) : unit",
  'STATE_WORDS[state].replace("#", String(number + 1))',
  'exercise.replace("first 1", "first number")',
  'rangeText(interval).replace(" to ", " and ")',
  "/^first (\\d)$/.exec(exercise)",
  "/^(.+) (-?\\d+(?:\\.\\d+)?(?:e-\\d+)?)$/.exec(text)",
  'profile?.title.split(",")[0] ?? id',
  'fineText(value).replace(/0$/, "")',
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
