import type { Combination } from "../../lock/combination";
import { type NumberToken, numberTokens, oneReading, plainNumbers } from "./numbersInText";

/** What one number of the combination may be written as: of a number between two graduations, both. */
type Wanted = readonly number[];

const isOne = ({ readings }: NumberToken, wanted: Wanted) => readings.some((number) => wanted.includes(number));

/** Whether each number has a token of its own. */
function areAllThere(tokens: readonly NumberToken[], [first, ...others]: readonly Wanted[]): boolean {
  if (first === undefined) return true;
  return tokens.some((token, k) => isOne(token, first) && areAllThere(tokens.toSpliced(k, 1), others));
}

/**
 * How many numbers may stand in one stretch with the whole combination, in any order: each number with two more, its
 * turns and its step ("2nd: 3 turns to 71"). Nearness counts in numbers and not in letters, for between two of them any
 * words may stand. Of two numbers, which other text holds far more often, only neighbors count.
 */
const stretch = (length: number) => (length < 3 ? length : 3 * length - 2);

/** The tokens from one on that lie in one stretch: letters that may be a number take no room in it. */
function stretchFrom(tokens: readonly NumberToken[], start: number, length: number): readonly NumberToken[] {
  let room = stretch(length);
  const end = tokens.findIndex(({ isSure }, k) => {
    if (k >= start && isSure) room -= 1;
    return room < 0;
  });
  return tokens.slice(start, end < 0 ? undefined : end);
}

const areNear = (tokens: readonly NumberToken[], wanted: readonly Wanted[]): boolean =>
  tokens.some((token, start) => {
    const first = wanted.findIndex((one) => isOne(token, one));
    return first >= 0 && areAllThere(stretchFrom(tokens, start, wanted.length), wanted);
  });

/** In order, with any others in between. */
function areInOrder(tokens: readonly NumberToken[], wanted: readonly Wanted[]): boolean {
  const sure = tokens.filter(({ isSure }) => isSure);
  let next = 0;
  for (const { readings } of sure) if (wanted[next]?.includes(readings[0] ?? -1)) next += 1;
  return next === wanted.length;
}

/** Tokens that count: of two numbers, or of several fields, a lone letter among words is a word. */
const counted = (tokens: readonly NumberToken[], isStrict: boolean) =>
  tokens.filter(({ isLetter, isByNumber }) => !isLetter || !isStrict || isByNumber);

function hasAsNumbers(wanted: readonly Wanted[], text: string, isSpread: boolean): boolean {
  const tokens = counted(numberTokens(text), isSpread || wanted.length < 3);
  if (areNear(tokens, wanted)) return true;
  return wanted.length >= 3 && (areInOrder(tokens, wanted) || areInOrder(tokens, wanted.toReversed()));
}

/** Where the numbers of a combination end that is run together from a place on: in any order, in any spelling of each. */
function* joinedEnds(text: string, at: number, spellings: readonly (readonly string[])[]): Generator<number> {
  if (spellings.length === 0) yield at;
  for (const [k, ways] of spellings.entries()) {
    for (const way of ways)
      if (text.startsWith(way, at)) yield* joinedEnds(text, at + way.length, spellings.toSpliced(k, 1));
  }
}

const isWhole = (text: string, spellings: readonly (readonly string[])[]) =>
  [...joinedEnds(text, 0, spellings)].includes(text.length);

/** Too short to be looked for within other digits: a year would be taken for it. */
const SHORT = 5;

const isWithin = (text: string, spellings: readonly (readonly string[])[]) =>
  [...text].some((_, at) => [...joinedEnds(text, at, spellings)].some((end) => end - at >= SHORT));

/** Digits with nothing but signs and spaces between them, run together. */
const joinedDigits = (text: string): string[] => text.split(/[\p{L};]+/u).map((piece) => piece.replace(/\D/g, ""));

/** All digits between dates and telephone numbers, whatever stands between them. */
const allDigits = (text: string): string[] => text.split(";").map((piece) => piece.replace(/\D/g, ""));

const backward = (text: string) => [...text].reverse().join("");

const ROMAN_UNITS = ["", "i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix"];
const ROMAN_TENS = ["", "x", "xx", "xxx", "xl", "l", "lx", "lxx", "lxxx", "xc"];
const roman = (number: number) =>
  `${"c".repeat(Math.floor(number / 100))}${ROMAN_TENS[Math.floor(number / 10) % 10]}${ROMAN_UNITS[number % 10]}`;

const spelled = (wanted: readonly Wanted[], ways: (number: number) => readonly string[]) =>
  wanted.map((numbers) => [...new Set(numbers.flatMap(ways))].filter((way) => way !== ""));

function hasJoined(wanted: readonly Wanted[], places: number, text: string): boolean {
  const decimal = spelled(wanted, (number) => [String(number), String(number).padStart(places, "0")]);
  if (joinedDigits(text).some((piece) => isWhole(piece, decimal))) return true;
  if (allDigits(text).some((piece) => isWithin(piece, decimal) || isWithin(backward(piece), decimal))) return true;
  const hex = spelled(wanted, (number) => [number.toString(16).padStart(2, "0")]);
  const letters = spelled(wanted, (number) => [roman(number)]);
  const pieces = text.toLowerCase().match(/[a-z\d]+/g) ?? [];
  return pieces.some((piece) => isWhole(piece.replace(/^0x/, ""), hex) || isWhole(piece, letters));
}

/** Where a combination stands in clear: in one field, by its index, or spread over several of them. */
export type ClearFinding = { readonly field: number } | { readonly field: null };

/**
 * Finds a combination that is written in clear.
 *
 * As separate numbers, in decimal, hexadecimal or Roman digits, in words or in digits of any script, with leading zeros
 * and whatever separators or words between them: in any order where all of them stand near each other (`stretch`), and in
 * their own order or backward however far apart. Run together: in any order, and digit by digit backward. In one field, or
 * over several.
 *
 * All numbers have to be there, each at a place of its own, for one or two of them stand in many a text. Passed over are
 * dates with a year of four digits and telephone numbers that begin with +. What is disguised on purpose, such as every
 * number raised by one, is not found.
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
  const wanted = combination.map((number) =>
    [Math.floor(number), Math.round(number)].map((whole) => whole % graduations),
  );
  const places = String(graduations - 1).length;
  const texts = fields.map(plainNumbers);
  const stands = (text: string, isSpread: boolean) =>
    hasAsNumbers(wanted, text, isSpread) || hasJoined(wanted, places, oneReading(text));
  const field = texts.findIndex((text) => stands(text, false));
  if (field >= 0) return { field };
  return stands(texts.filter((text) => /\S/.test(text)).join(" , "), true) ? { field: null } : undefined;
}
