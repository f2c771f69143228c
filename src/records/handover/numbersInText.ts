const UNITS = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
const TEENS = [
  ...["ten", "eleven", "twelve", "thirteen", "fourteen"],
  ...["fifteen", "sixteen", "seventeen", "eighteen", "nineteen"],
];
const TENS = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

/** A word begins and ends where there is no letter: an underscore is a separator like any other. */
const HEAD = "(?<![A-Za-z])";
const TAIL = "(?![A-Za-z])";

const TEN_AND_UNIT = new RegExp(`${HEAD}(${TENS.join("|")})(?:[\\s-]*(${UNITS.slice(1).join("|")}))?${TAIL}`, "gi");
const SMALL_NUMBER = new RegExp(`${HEAD}(${[...TEENS, ...UNITS].join("|")})${TAIL}`, "gi");

const indexIn = (list: readonly string[], word: string | undefined) =>
  word === undefined ? 0 : list.indexOf(word.toLowerCase());
const smallNumber = (word: string) => {
  const teen = indexIn(TEENS, word);
  return teen < 0 ? indexIn(UNITS, word) : 10 + teen;
};

/** Digits of any script as 0 to 9: Unicode lays each script's ten out in a row. NFKC makes letters of Roman signs. */
const plainDigits = (text: string) =>
  text.normalize("NFKC").replace(/\p{Nd}/gu, (digit) => {
    const code = digit.codePointAt(0) ?? 0;
    let zero = code;
    while (code - zero < 9 && /^\p{Nd}$/u.test(String.fromCodePoint(zero - 1))) zero -= 1;
    return String(code - zero);
  });

/** Number words run together into one, and nothing else in it. */
const JOINED_WORDS = new RegExp(`${HEAD}(?:${[...TENS, ...TEENS, ...UNITS].join("|")}){2,}${TAIL}`, "gi");
const EACH_WORD = new RegExp(`${[...TENS, ...TEENS, ...UNITS].join("|")}`, "gi");

/** Stands between the numbers that one word may be; no text from outside keeps any. */
const OR = "\u{E000}";

/** "Seventy-one" is 71, and in a row of numbers also 70 and 1: two places, either of which may be the whole. */
const tenAndUnit = (ten: number, unit: number) =>
  unit === 0 ? String(ten) : `${ten + unit}${OR}${ten} ${unit}${OR}${ten + unit}`;

/** A text with one number for each number word: "seventy-one" is 71 alone. */
export const oneReading = (text: string) => text.replace(/(\d+)\u{E000}\d+ \d+\u{E000}\d+/gu, "$1");

const numbersAsDigits = (text: string) =>
  plainDigits(text)
    .replaceAll(OR, " ")
    .replace(JOINED_WORDS, (words) => words.replace(EACH_WORD, (word) => `${word} `))
    .replace(TEN_AND_UNIT, (_, ten: string, unit: string | undefined) =>
      tenAndUnit(20 + 10 * indexIn(TENS, ten), indexIn(UNITS, unit ?? "zero")),
    )
    .replace(SMALL_NUMBER, (word) => String(smallNumber(word)));

/** A date with a year of four digits is no combination: 2026-11-26, 26.11.2026, 11/26/2026. */
const DATES = /\b(?:(?:19|20)\d\d([-/.])[01]?\d\1[0-3]?\d|[0-3]?\d([-/.])[0-3]?\d\2(?:19|20)\d\d)\b/g;

/** A telephone number in its international form is no combination; it has more digits than one of four numbers. */
const PHONES = /\+\d(?:[\s()/-]*\d){8,14}/g;

/**
 * A text with its number words and the digits of other scripts as 0 to 9, and without what is plainly no combination:
 * dates with a year of four digits, and telephone numbers that begin with +. A semicolon stands in their place.
 */
export function plainNumbers(text: string): string {
  return numbersAsDigits(text).replace(DATES, " ; ").replace(PHONES, " ; ");
}

/** A place in a text that may be a number, and every number that it may be. */
export interface NumberToken {
  readonly readings: readonly number[];
  /** Digits, but for the mark 0x, or a number word; letters alone may be a number, Roman or hexadecimal, but mostly are none. */
  readonly isSure: boolean;
  /** Letters alone are a word more often than a number, and one letter nearly always. */
  readonly isLetter: boolean;
  /** Whether only signs and spaces part it from a number before it or after it. */
  readonly isByNumber: boolean;
}

/** Up to 199, as written by rule and with four strokes in a row. */
const ROMAN = /^c?(?:x[cl]|l?x{0,4})(?:i[xv]|v?i{0,4})$/i;
const ROMAN_DIGITS: Readonly<Record<string, number>> = { i: 1, v: 5, x: 10, l: 50, c: 100 };

const romanReadings = (letters: string): number[] => {
  if (!ROMAN.test(letters)) return [];
  const digits = [...letters.toLowerCase()].map((letter) => ROMAN_DIGITS[letter] ?? 0);
  return [digits.reduce((sum, digit, k) => sum + (digit < (digits[k + 1] ?? 0) ? -digit : digit), 0)];
};

/** Of a whole piece, with the usual marks: 1A, 0x1A, 1Ah. */
const hexReadings = (piece: string): number[] => {
  const [, digits] = /^(?:0x)?([0-9a-f]{1,3})h?$/i.exec(piece) ?? [];
  return digits === undefined ? [] : [Number.parseInt(digits, 16)];
};

type Unplaced = Omit<NumberToken, "isByNumber"> & { readonly start: number; readonly end: number };

/** Which run of a piece bears what the whole piece is in hexadecimal digits: its first digits, or else its letters. */
const hexBearer = (runs: readonly string[], isMarked: boolean) =>
  isMarked
    ? Math.min(2, runs.length - 1)
    : Math.max(
        runs.findIndex((run) => /\d/.test(run)),
        0,
      );

/** Either place of a word like "seventy-one". Its unit, mostly a part of the number, takes no room of its own. */
function wordToken(piece: string, start: number): Unplaced {
  const readings = piece.split(OR).map(Number);
  const isSure = (readings[0] ?? 0) > (readings[1] ?? 0);
  return { readings, isSure, isLetter: false, start, end: start + piece.length };
}

/** Numbers of a piece of letters and digits: each run of digits, and its letters where they may be a number. */
function pieceTokens(piece: string, at: number): Unplaced[] {
  const hex = hexReadings(piece);
  const isMarked = hex.length > 0 && /^0x/i.test(piece);
  const runs = [...piece.matchAll(/\d+|[a-z]+/gi)];
  const bearer = hexBearer(
    runs.map(([run]) => run),
    isMarked,
  );
  return runs.flatMap(({ 0: run, index }, k) => {
    const hasDigits = /\d/.test(run);
    const readings = [...(hasDigits ? [Number(run)] : romanReadings(run)), ...(k === bearer ? hex : [])];
    const isSure = isMarked ? k === bearer : hasDigits;
    const [start, isLetter] = [at + index, run.length === 1 && !hasDigits && !isMarked];
    return readings.length === 0 ? [] : [{ readings, isSure, isLetter, start, end: start + run.length }];
  });
}

/**
 * Everything in a text that may be a number, in its order: in decimal, hexadecimal or Roman digits.
 *
 * @param text - as `plainNumbers` gives it
 */
export function numberTokens(text: string): NumberToken[] {
  const found = [...text.matchAll(/[a-z\d\u{E000}]+/giu)].flatMap(({ 0: piece, index }) =>
    piece.includes(OR) ? [wordToken(piece, index)] : pieceTokens(piece, index),
  );
  const isClose = (from: number | undefined, to: number | undefined) =>
    from !== undefined && to !== undefined && !/[\p{L}\d;]/u.test(text.slice(from, to));
  return found.map(({ start, end, ...token }, k) => ({
    ...token,
    isByNumber: isClose(found[k - 1]?.end, start) || isClose(end, found[k + 1]?.start),
  }));
}
