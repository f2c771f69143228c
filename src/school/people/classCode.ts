/** Letters and digits that are not taken for one another, spoken or written: no 0 O, 1 I L, 2 Z, 5 S, 8 B, U V. */
const ALPHABET = "34679ACDEFGHJKMNPQRTWXY";

/** Letters of a code: 23 to the 8th are 78 thousand million, more than anyone can try in the days that a code lives. */
const LENGTH = 8;
const HALF = LENGTH / 2;

/** Bytes of chance that a code is made of: more than it needs, since those that would favor a letter are passed over. */
export const CODE_BYTES = 64;

/** Bytes from here on would come upon some letters more often than upon others. */
const FAIR_BELOW = 256 - (256 % ALPHABET.length);

/** A code of a class from bytes of chance; null where these do not do (with `CODE_BYTES` about once in 10^30). */
export function codeFrom(bytes: Uint8Array): string | null {
  const letters = [...bytes].filter((byte) => byte < FAIR_BELOW).map((byte) => ALPHABET[byte % ALPHABET.length]);
  return letters.length < LENGTH ? null : letters.slice(0, LENGTH).join("");
}

/** A code as it is stored, from what somebody typed: in either case, with or without spaces and hyphens; null where it is none. */
export function readCode(typed: string): string | null {
  const code = typed
    .normalize("NFKC")
    .toUpperCase()
    .replace(/[\s\p{Pd}]/gu, "");
  return code.length === LENGTH && [...code].every((letter) => ALPHABET.includes(letter)) ? code : null;
}

/** A code as it is shown: in two halves. */
export const codeText = (code: string): string => `${code.slice(0, HALF)}-${code.slice(HALF)}`;
