import { readdirSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, test } from "vitest";

/*
 * One scale for the whole page: sizes of type, spaces, corners and lines are tokens of `theme.css`. Drawings have sizes of
 * their own, in the units of the drawing; paper has points and millimeters.
 */

const DRAWINGS = ["dial.css", "cutaway.css", "turnChart.css", "charts.css", "typeface.css"];

const OWN_SIZES: readonly { readonly what: string; readonly found: RegExp; readonly instead: string }[] = [
  { what: "size of type", found: /font-size: [\d.]+(px|rem|em)/, instead: "--type-fine to --type-title" },
  {
    what: "space",
    found: /(?<!scroll-)\b(gap|padding|margin)(-\w+)*: ([^;]*[ (])?-?[\d.]+px/,
    instead: "--space-1 to --space-6",
  },
  { what: "corner", found: /border-radius: [^;]*?[1-9.]+(px|%)/, instead: "--radius or --round" },
  {
    what: "line",
    found: /border(-(top|right|bottom|left|inline|block))*(-width)?: [\d.]*[1-9]px/,
    instead: "--thin or --thick",
  },
];

const onScreen = (css: string) => css.replaceAll(/@media print \{(?:[^{}]|\{[^{}]*\})*\}/g, "");

const sheets = readdirSync("src", { recursive: true, encoding: "utf8" })
  .filter((file) => file.endsWith(".css") && !DRAWINGS.includes(basename(file)))
  .map((file) => join("src", file));

const misfits = (css: string): string[] =>
  onScreen(css)
    .split("\n")
    .flatMap((line) =>
      OWN_SIZES.filter(({ found }) => found.test(line)).map(
        ({ what, instead }) => `a ${what} of its own (take ${instead}): ${line.trim()}`,
      ),
    );

describe("tokens", () => {
  test.each(sheets)("%s takes its sizes from them", (file) => {
    expect(misfits(readFileSync(file, "utf8"))).toEqual([]);
  });

  test.each([
    "font-size: 14px;",
    "padding: 0 14px;",
    "margin-top: 6px;",
    "gap: 10px;",
    "margin-inline: -14px;",
    "border-radius: 6px;",
    "border-left: 3px solid red;",
  ])("a planted %s is found", (line) => {
    expect(misfits(`.a {\n  ${line}\n}`)).toHaveLength(1);
  });
});
