import type { Combination } from "../../lock/combination";

const UNITS = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
const TEENS = [
  ...["ten", "eleven", "twelve", "thirteen", "fourteen"],
  ...["fifteen", "sixteen", "seventeen", "eighteen", "nineteen"],
];
const TENS = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

const TEN_AND_UNIT = new RegExp(`\\b(${TENS.join("|")})(?:[\\s-]*(${UNITS.slice(1).join("|")}))?\\b`, "gi");
const SMALL_NUMBER = new RegExp(`\\b(${[...TEENS, ...UNITS].join("|")})\\b`, "gi");

const indexIn = (list: readonly string[], word: string | undefined) =>
  word === undefined ? 0 : list.indexOf(word.toLowerCase());
const smallNumber = (word: string) => {
  const teen = indexIn(TEENS, word);
  return teen < 0 ? indexIn(UNITS, word) : 10 + teen;
};

/** Digits of any script as 0 to 9: Unicode lays each script's ten out in a row. */
const plainDigits = (text: string) =>
  text.normalize("NFKC").replace(/\p{Nd}/gu, (digit) => {
    const code = digit.codePointAt(0) ?? 0;
    let zero = code;
    while (code - zero < 9 && /^\p{Nd}$/u.test(String.fromCodePoint(zero - 1))) zero -= 1;
    return String(code - zero);
  });

/** Number words run together into one, and nothing else in it. */
const JOINED_WORDS = new RegExp(`\\b(?:${[...TENS, ...TEENS, ...UNITS].join("|")}){2,}\\b`, "gi");
const EACH_WORD = new RegExp(`${[...TENS, ...TEENS, ...UNITS].join("|")}`, "gi");

const numbersAsDigits = (text: string) =>
  plainDigits(text)
    .replace(JOINED_WORDS, (words) => words.replace(EACH_WORD, (word) => `${word} `))
    .replace(TEN_AND_UNIT, (_, ten: string, unit: string | undefined) => {
      return String(20 + 10 * indexIn(TENS, ten) + (unit === undefined ? 0 : indexIn(UNITS, unit)));
    })
    .replace(SMALL_NUMBER, (word) => String(smallNumber(word)));

/** A date with a year of four digits is no combination: 2026-11-26, 26.11.2026, 11/26/2026. */
const DATES = /\b(?:(?:19|20)\d\d([-/.])[01]?\d\1[0-3]?\d|[0-3]?\d([-/.])[0-3]?\d\2(?:19|20)\d\d)\b/g;

/** A telephone number in its international form is no combination; it has more digits than one of four numbers. */
const PHONES = /\+\d(?:[\s()/-]*\d){8,14}/g;

const withoutOtherNumbers = (text: string) => text.replace(DATES, " ; ").replace(PHONES, " ; ");

const isWithin = (wanted: readonly number[], found: readonly number[]): boolean => {
  let next = 0;
  for (const number of found) if (number === wanted[next]) next += 1;
  return next === wanted.length;
};

const isRun = (wanted: readonly number[], found: readonly number[]): boolean =>
  found.some((_, start) => wanted.every((number, k) => found[start + k] === number));

/** Numbers in a row; where there are three or more of them, with others in between as well. */
const hasAsNumbers = (wanted: readonly number[], text: string): boolean => {
  const found = [...text.matchAll(/\d+/g)].map(([digits]) => Number(digits));
  return wanted.length >= 3 ? isWithin(wanted, found) : isRun(wanted, found);
};

/** Digits with nothing but signs and spaces between them, run together. */
const joinedDigits = (text: string): string[] => text.split(/[\p{L};]+/u).map((piece) => piece.replace(/\D/g, ""));

/** All digits between dates and telephone numbers, whatever stands between them. */
const allDigits = (text: string): string[] => text.split(";").map((piece) => piece.replace(/\D/g, ""));

/** Too short to be looked for within other digits: a year would be taken for it. */
const SHORT = 5;

const hasJoined = (digits: string, text: string): boolean =>
  digits.length < SHORT
    ? joinedDigits(text).includes(digits)
    : allDigits(text).some((piece) => piece.includes(digits) || piece.includes([...digits].reverse().join("")));

const isInText = (wanted: readonly number[], places: number, text: string): boolean => {
  const padded = wanted.map((number) => String(number).padStart(places, "0")).join("");
  return hasAsNumbers(wanted, text) || hasJoined(padded, text) || hasJoined(wanted.join(""), text);
};

/** Where a combination stands in clear: in one field, by its index, or spread over several of them. */
export type ClearFinding = { readonly field: number } | { readonly field: null };

/**
 * Finds a combination that is written in clear: with any separators or words between the numbers, with leading zeros,
 * run together, backwards number by number or digit by digit, in words, in digits of any script, with letters between the
 * digits, in one field or spread over several in their order.
 *
 * Dates with a year of four digits and telephone numbers that begin with + are passed over. It cannot find what is
 * disguised on purpose, such as every number raised by one.
 *
 * @param fields - free texts, in the order of the form
 * @param combination - as on the face of the dial; of a number between two graduations both are looked for
 * @param graduations - in one turn; it tells how many digits a number has
 * @returns where it stands, or undefined
 */
export function combinationInClear(
  fields: readonly string[],
  combination: Combination,
  graduations: number,
): ClearFinding | undefined {
  const ways = [Math.floor, Math.round].flatMap((whole) => {
    const forward = combination.map((number) => whole(number) % graduations);
    return [forward, forward.toReversed()];
  });
  const places = String(graduations - 1).length;
  const texts = fields.map((field) => withoutOtherNumbers(numbersAsDigits(field)));
  const stands = (text: string) => ways.some((way) => isInText(way, places, text));
  const field = texts.findIndex(stands);
  if (field >= 0) return { field };
  return stands(texts.filter((text) => /\d/.test(text)).join(" ")) ? { field: null } : undefined;
}
