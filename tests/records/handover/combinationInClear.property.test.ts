import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { combinationInClear } from "../../../src/records/handover/combinationInClear";

const NUMBERS = [38, 71, 26];
const isFound = (...fields: string[]) => combinationInClear(fields, NUMBERS, 100) !== undefined;

describe("38-71-26 is found", () => {
  test.each([
    ["38-71-26"],
    ["38/71/26"],
    ["38 71 26"],
    ["38,71,26"],
    ["38, then 71, then 26"],
    ["L38 R71 L26"],
    ["left to 038, right to 071, left to 026"],
    ["387126"],
    ["code=387126!"],
    ["26-71-38"],
    ["267138"],
    ["3 8 7 1 2 6"],
    ["３８－７１－２６"],
    ["٣٨-٧١-٢٦"],
    ["thirty-eight, seventy-one, twenty six"],
    ["Thirty Eight 71 twenty-six"],
    ["thirtyeightseventyonetwentysix"],
    ["0x1A; step 2: 3 turns to seventy-one; step 2: 3 turns to 38"],
    ["3a8b7c1d2e6"],
    ["621783"],
    ["+38-71-26"],
    ["on 2026-11-26 set to 38 - 71 - 26 by night"],
    ["71-38-26"],
    ["713826"],
    ["26, and then 38, and last of all 71"],
    ["step 1: 4 turns to 26; step 2: 3 turns to 71; step 3: 2 turns to 38"],
    ["XXXVIII-LXXI-XXVI"],
    ["left to xxvi, right to lxxi, left to xxxviii"],
    ["ⅩⅩⅥ/ⅬⅩⅪ/ⅩⅩⅩⅧ"],
    ["XXXVIIILXXIXXVI"],
    ["0x26 0x47 0x1A"],
    ["26h, 47h, 1Ah"],
    ["1a-26-47"],
    ["#26471A"],
    ["26, LXXI and thirty-eight"],
  ])("in %s", (text) => {
    expect(isFound(text)).toBe(true);
  });

  test("spread over fields, and it says so", () => {
    expect(combinationInClear(["P. Underbell 38", "door 71", "x", "26"], NUMBERS, 100)).toEqual({ field: null });
    expect(combinationInClear(["", "387126", ""], NUMBERS, 100)).toEqual({ field: 1 });
  });
});

describe("other numbers are let pass", () => {
  test.each([
    ["2026-11-26"],
    ["26.11.2026 and 11/26/2026"],
    ["+1 (387) 126-4455"],
    ["Lock 387, door 2"],
    ["38 inches above the floor"],
    ["38 and 71"],
    ["3 people, 8 keys, 7 rooms"],
    ["fifth floor, room twelve"],
  ])("%s", (text) => {
    expect(isFound(text)).toBe(false);
  });
});

const WAYS = {
  decimal: String,
  padded: (number: number) => String(number).padStart(2, "0"),
  hexadecimal: (number: number) => number.toString(16),
  prefixed: (number: number) => `0x${number.toString(16).toUpperCase()}`,
  roman: romanOf,
  words: spelledOf,
};

/** Written by subtraction alone, apart from the code's own tables. Zero has no Roman digit. */
function romanOf(number: number): string {
  const signs = [
    [90, "XC"],
    [50, "L"],
    [40, "XL"],
    [10, "X"],
    [9, "IX"],
    [5, "V"],
    [4, "IV"],
    [1, "I"],
  ] as const;
  const [value, sign] = signs.find(([size]) => size <= number) ?? [0, ""];
  return value === 0 ? "" : sign + romanOf(number - value);
}

const SMALL =
  "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split(
    " ",
  );
const TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split(" ");
function spelledOf(number: number): string {
  if (number < 20) return SMALL[number] ?? "";
  const unit = number % 10 === 0 ? "" : `-${SMALL[number % 10]}`;
  return `${TENS[Math.floor(number / 10) - 2]}${unit}`;
}

const way = fc.constantFrom(...(Object.keys(WAYS) as (keyof typeof WAYS)[]));
const separator = fc.oneof(
  fc.constantFrom(
    "-",
    " / ",
    ", ",
    " then ",
    " – ",
    ". ",
    "\n",
    " right to ",
    " | ",
    "_",
    "…",
    " · ",
    "; step 2: 3 turns to ",
  ),
  fc.stringMatching(/^[ .,;:|/_~*–—-]{1,6}$/),
);

test("a ten and a unit in words are two numbers of a combination, or one", () => {
  for (const combination of [
    [70, 1, 40],
    [71, 40, 5],
    [71, 40],
    [70, 1],
  ]) {
    expect(combinationInClear(["seventy-one, forty, five"], combination, 100)).toEqual({ field: 0 });
  }
  expect(combinationInClear(["seventy-one, forty, five"], [71, 70, 1], 100)).toBeUndefined();
});

test("any combination is found in any order, each number in any notation, with any separators", () => {
  const numbersAndOrder = fc
    .array(fc.integer({ min: 1, max: 99 }), { minLength: 3, maxLength: 4 })
    .chain((numbers) => fc.tuple(fc.constant(numbers), fc.shuffledSubarray(numbers, { minLength: numbers.length })));
  fc.assert(
    fc.property(
      numbersAndOrder,
      fc.array(way, { minLength: 4, maxLength: 4 }),
      fc.array(separator, { minLength: 4, maxLength: 4 }),
      ([numbers, told], ways, separators) => {
        const text = told.map((number, k) => `${WAYS[ways[k] ?? "decimal"](number)}${separators[k]}`).join("");
        expect(combinationInClear(["P. Underbell", `set: ${text} today`], numbers, 100)).toEqual({ field: 1 });
      },
    ),
    { numRuns: 3000 },
  );
});

test("any two numbers next to each other are found in either order and any notation", () => {
  const signs = fc.constantFrom("-", " / ", ", ", " then ", "; ", " · ");
  const pair = fc.tuple(fc.integer({ min: 16, max: 99 }), fc.integer({ min: 16, max: 99 }));
  fc.assert(
    fc.property(pair, way, way, signs, fc.boolean(), ([a, b], first, second, sign, isTurned) => {
      const [one, other] = [WAYS[first](a), WAYS[second](b)];
      // One letter is nearly always a word, so L for 50 counts only right beside the other number: the next test.
      fc.pre(![one, other].some((word) => /^[a-z]$/i.test(word)));
      expect(combinationInClear([`${one}${sign}${other}`], isTurned ? [b, a] : [a, b], 100)).toEqual({ field: 0 });
    }),
  );
});

test("a single Roman letter is a number right beside the other one, and a word farther off", () => {
  const found = (text: string) => combinationInClear([text], [50, 16], 100) !== undefined;
  expect(["L-16", "16 / L", "L, 16", "L then 16", "class L; room 16"].map(found)).toEqual([
    true,
    true,
    true,
    false,
    false,
  ]);
});

test("of two numbers a year is not taken for them, but the two in a row are", () => {
  const found = (text: string) => combinationInClear([text], [20, 26], 100) !== undefined;
  expect([found("2026-11-26"), found("20-26"), found("2026"), found("20 people, room 4, 26 chairs")]).toEqual([
    ...[false, true, true, false],
  ]);
});

test("four numbers are not taken for a telephone number, and a number between two graduations is found", () => {
  expect(combinationInClear(["+38-71-26-54"], [38, 71, 26, 54], 100)).toEqual({ field: 0 });
  expect(combinationInClear(["38.5 71 26"], [38.5, 71, 26], 100)).toEqual({ field: 0 });
  expect(combinationInClear(["39 71 26"], [38.5, 71, 26], 100)).toEqual({ field: 0 });
});

test("single digits count with their zero and without", () => {
  const found = (text: string) => combinationInClear([text], [5, 71, 8], 100) !== undefined;
  expect([
    found("5-71-8"),
    found("057108"),
    found("5718"),
    found("05 71 08"),
    found("zero five, 71, eight"),
    found("5-17-8"),
  ]).toEqual([...[true, true, true, true, true, false]]);
});

const anyCombination = fc.array(fc.integer({ min: 0, max: 99 }), { minLength: 3, maxLength: 4 });
const digits = (number: number, isPadded: boolean) => (isPadded ? String(number).padStart(2, "0") : String(number));

test("any combination is found in any usual writing, forward and backward, among other words", () => {
  fc.assert(
    fc.property(
      anyCombination,
      fc.constantFrom("-", "/", " ", ", ", " then ", " – ", ".", "\n", " right "),
      fc.boolean(),
      fc.boolean(),
      fc.constantFrom("", "set to ", "Remarks: all well; "),
      (numbers, separator, isPadded, isBackward, before) => {
        const told = isBackward ? numbers.toReversed() : numbers;
        const text = `${before}${told.map((number) => digits(number, isPadded)).join(separator)} today`;
        expect(combinationInClear(["P. Underbell", text], numbers, 100)).toEqual({ field: 1 });
      },
    ),
  );
});

test("any combination is found spread over fields in their order, and run together", () => {
  fc.assert(
    fc.property(anyCombination, (numbers) => {
      const joined = numbers.map((number) => digits(number, true)).join("");
      expect(combinationInClear([`no. ${joined}`], numbers, 100)).toEqual({ field: 0 });
      expect(
        combinationInClear(
          numbers.map((number) => `is ${number}`),
          numbers,
          100,
        ),
      ).toEqual({ field: null });
    }),
  );
});

test("text without digits or number words never alarms, nor does any date", () => {
  const words = fc
    .array(fc.constantFrom("door", "lock", "holder", "told", "Mallow", "night"))
    .map((all) => all.join(" "));
  const date = fc
    .date({ min: new Date(0), max: new Date("2099-12-31"), noInvalidDate: true })
    .map((one) => one.toISOString().slice(0, 10));
  fc.assert(
    fc.property(anyCombination, words, date, (numbers, text, day) => {
      expect(combinationInClear([text, day], numbers, 100)).toBeUndefined();
    }),
  );
});
