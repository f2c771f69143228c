import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { foldedName } from "../../../src/school/names/foldedName";
import { isReadableName, isReadableText } from "../../../src/school/names/readable";

/** Signs that nobody sees, or that change how others are shown. */
const HIDDEN = [
  { what: "NUL", sign: "\0" },
  { what: "an escape", sign: "\u001b" },
  { what: "a delete", sign: "\u007f" },
  { what: "a next line", sign: "\u0085" },
  { what: "a soft hyphen", sign: "\u00ad" },
  { what: "a grapheme joiner", sign: "\u034f" },
  { what: "a mark of Arabic letters", sign: "\u061c" },
  { what: "a blank first letter of Korean", sign: "\u115f" },
  { what: "a blank vowel of Korean", sign: "\u1160" },
  { what: "a space of no width", sign: "\u200b" },
  { what: "a mark left to right", sign: "\u200e" },
  { what: "a mark right to left", sign: "\u200f" },
  { what: "a line separator", sign: "\u2028" },
  { what: "a paragraph separator", sign: "\u2029" },
  ..."\u202a\u202b\u202c\u202d\u202e".split("").map((sign, k) => ({ what: `an embedding or override (${k})`, sign })),
  { what: "a word joiner", sign: "\u2060" },
  ..."\u2066\u2067\u2068\u2069".split("").map((sign, k) => ({ what: `an isolate (${k})`, sign })),
  { what: "blank Braille", sign: "\u2800" },
  { what: "a Korean filler", sign: "\u3164" },
  { what: "a mark of byte order", sign: "\ufeff" },
  { what: "half a Korean filler", sign: "\uffa0" },
  { what: "the first half of a pair", sign: "\ud83d" },
  { what: "the second half of a pair", sign: "\ude00" },
  { what: "a private sign", sign: "\ue000" },
  { what: "a tag", sign: "\u{e0041}" },
] as const;

const LINES = ["\n", "\r\n", "\t"];

/** Names as people have them. */
const NAMES = [
  "Ann O’Hill",
  "Zoë Straße",
  "Nguyễn Thị Ánh",
  "Łukasz Żółć",
  "Ольга",
  "Ελένη",
  "محمد",
  "נועה",
  "अनिता क्षत्रिय",
  "ಶ್ರೀ",
  "தமிழ்",
  "ณัฐ",
  "王小明",
  "さくら",
  "김하늘",
  "አበበ",
  "ᏣᎳᎩ",
  "Bench 7 (window)",
  "3rd years – Monday",
];

/** What is written with joiners. */
const JOINED = [
  { what: "Persian", name: "علی\u200cرضا" },
  { what: "Hindi with a half letter", name: "क्\u200dष" },
  { what: "Kannada", name: "ರ್\u200cಕ" },
  { what: "Sinhala", name: "ශ්\u200dරී" },
  { what: "a sign of a person at work", name: "Bench 👩\u200d🔧" },
  { what: "the same with a skin tone", name: "Bench 👩🏽\u200d🔧" },
  { what: "a sign with a variant in it", name: "Bench 🏳️\u200d🌈" },
];

describe("a name", () => {
  test.each(NAMES)("%s can be read", (name) => {
    expect(isReadableName(name)).toBe(true);
    expect(isReadableName(name.normalize("NFD"))).toBe(true);
  });

  test.each(JOINED)("$what keeps its joiners, and is the same name without", ({ name }) => {
    expect(isReadableName(name)).toBe(true);
    expect(foldedName(name)).toBe(foldedName(name.replace(/[\u200c\u200d]/g, "")));
  });

  test.each(HIDDEN)("$what makes it unreadable, wherever it is", ({ sign }) => {
    for (const name of [`${sign}Ann`, `An${sign}n`, `Ann${sign}`, `Ann ${sign}Hill`, sign]) {
      expect(isReadableName(name), JSON.stringify(name)).toBe(false);
      expect(isReadableText(name), JSON.stringify(name)).toBe(false);
    }
  });

  test.each(["\u200dAnn", "Ann\u200c", "Ann \u200dHill", "An\u200d\u200dn", "7\u200c7", "\u200d"])(
    "a joiner that joins nothing makes %j unreadable",
    (name) => {
      expect(isReadableName(name)).toBe(false);
    },
  );

  test.each(["", " ", "...", "–", "👩"])("%j is none", (name) => {
    expect(isReadableName(name)).toBe(false);
  });

  test.each(LINES)("it is on one line: %j is for texts alone", (sign) => {
    expect(isReadableName(`Ann${sign}Hill`)).toBe(false);
    expect(isReadableText(`Slower.${sign}Rest longer.`)).toBe(true);
  });

  test("whatever can be read has no sign of direction, half pair or control, and every letter of every script can", () => {
    const spoof = /[\p{Cc}\p{Cs}\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (name) => {
        if (isReadableName(name)) expect(name).not.toMatch(spoof);
      }),
    );
    const letters = fc
      .string({ unit: "grapheme", minLength: 1 })
      .filter((one) => /^[\p{L}\p{M}]+$/u.test(one) && /\p{L}/u.test(one));
    const blank = /[\u115f\u1160\u3164\uffa0]|\u034f|\u17b4|\u17b5/u;
    fc.assert(
      fc.property(letters, (name) => {
        expect(isReadableName(name)).toBe(!blank.test(name));
      }),
    );
  });
});
