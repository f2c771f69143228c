import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";

/** Words that have given way to others, so that one word means one thing on every screen, print and message. */
const GONE: readonly { readonly pattern: RegExp; readonly instead: string }[] = [
  { pattern: /from the (right|left)\b/, instead: "turning right, turning left" },
  { pattern: /\bput by\b|\btaken up\b/, instead: "saved, resumed" },
  { pattern: /present combination/i, instead: "current combination" },
  { pattern: /readings accepted|reading that its series|too long to be a reading/, instead: "stops" },
  { pattern: /right condition|is no condition/, instead: "defect" },
  { pattern: /handover run/i, instead: "handover: a run is motion in one direction" },
  { pattern: /\bdoes not check\b/, instead: "fails its check" },
  { pattern: /\b(This|this) (file )?is no (logbook|record)\b/, instead: "is not a logbook" },
];

const COMMENT = /\/\*[\s\S]*?\*\/|(?<=^|\s)\/\/.*$/gm;
/** Texts in quotes and between tags: what can be shown. Templates may go over several lines. */
const TEXT = /"[^"\n]*"|`[^`]*`|>[^<>{}]*[<{]/g;

const files = readdirSync("src", { recursive: true, encoding: "utf8" }).filter((name) => /\.tsx?$/.test(name));
const shownTexts = (name: string): string[] => [
  ...(readFileSync(`src/${name}`, "utf8").replace(COMMENT, "").match(TEXT) ?? []),
];

test("finds what a screen shows", () => {
  expect(files.length).toBeGreaterThan(500);
  expect(shownTexts("app/exercises/handover/HandoverScreen.tsx")).toContain('"Trouble bench"');
});

test.each(GONE)("no text says $pattern", ({ pattern, instead }) => {
  const found = files.flatMap((name) =>
    shownTexts(name).flatMap((text) => (pattern.test(text) ? [`${name}: ${text}`] : [])),
  );
  expect(found, `say: ${instead}`).toEqual([]);
});
