/** Letters and digits that are not taken for one another, spoken or written: no 0 O, 1 I L, 2 Z, 5 S, 8 B, U V. */
const ALPHABET = "34679ACDEFGHJKMNPQRTWXY";

/** Letters of a class code: 23 to the 8th are 78 thousand million, more than anyone can try in the days that a code lives. */
const CLASS_LETTERS = 8;

/**
 * Letters of a card's own code, which lives as long as the card: 23 to the 16th are 6 times 10^21, too many to be tried at the
 * server, and too many to be found from their hashes in a backup.
 */
export const CARD_LETTERS = 16;

/** Letters that are shown and typed together. */
const GROUP = 4;

/** Bytes of chance that a code is made of: more than it needs, since those that would favor a letter are passed over. */
export const CODE_BYTES = 64;

/** Bytes from here on would come upon some letters more often than upon others. */
const FAIR_BELOW = 256 - (256 % ALPHABET.length);

/**
 * A code from bytes of chance; null where these do not do (with `CODE_BYTES` less than once in 10^30).
 *
 * @param length - letters
 */
export function codeFrom(bytes: Uint8Array, length = CLASS_LETTERS): string | null {
  const letters = [...bytes].filter((byte) => byte < FAIR_BELOW).map((byte) => ALPHABET[byte % ALPHABET.length]);
  return letters.length < length ? null : letters.slice(0, length).join("");
}

const bareCode = (typed: string): string =>
  typed
    .normalize("NFKC")
    .toUpperCase()
    .replace(/[\s\p{Pd}]/gu, "");

/**
 * A code as it is stored, from what somebody typed: in either case, with or without spaces and hyphens; null where it is none.
 *
 * @param length - letters
 */
export function readCode(typed: string, length = CLASS_LETTERS): string | null {
  const code = bareCode(typed);
  return code.length === length && [...code].every((letter) => ALPHABET.includes(letter)) ? code : null;
}

/** Whether what somebody typed is meant for the code of a card: it is longer than any of a class. */
export const isLikeCardCode = (typed: string): boolean => bareCode(typed).length > CLASS_LETTERS;

/** A code as it is shown: in groups. */
export const codeText = (code: string): string => code.replace(new RegExp(`.{${GROUP}}(?=.)`, "g"), "$&-");
