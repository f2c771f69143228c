import { sha256 } from "@noble/hashes/sha2.js";
import { hexToBytes } from "@noble/hashes/utils.js";

/** Digits that nobody takes for each other: no I, L, O, U. Source: D. Crockford, "Base 32". */
const DIGITS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
const BITS = 5;
const GROUP = 5;
const GROUPS = 5;

/** The first letters of a hash in base 32. */
function base32(bytes: Uint8Array, letters: number): string {
  let [held, bits, text] = [0, 0, ""];
  for (const byte of bytes) {
    held = ((held << 8) | byte) & 0xfff;
    bits += 8;
    while (bits >= BITS && text.length < letters) {
      bits -= BITS;
      text += DIGITS[(held >> bits) & 31];
    }
  }
  return text;
}

const grouped = (letters: string) => (letters.match(new RegExp(`.{${GROUP}}`, "g")) ?? []).join("-");

/**
 * The fingerprint of a public key, for a print and for a person to compare: five groups of five letters and digits, the
 * first 125 bits of its SHA-256.
 *
 * @param publicKey - 32 bytes, hexadecimal
 */
export const keyFingerprint = (publicKey: string): string =>
  grouped(base32(sha256(hexToBytes(publicKey)), GROUP * GROUPS));

/** A fingerprint as somebody typed it off a print: case, spaces and hyphens do not matter, nor O for 0, I and L for 1. */
export function typedFingerprint(text: string): string | null {
  const letters = text.toUpperCase().replaceAll(/[\s-]/g, "").replaceAll("O", "0").replaceAll(/[IL]/g, "1");
  return new RegExp(`^[${DIGITS}]{${GROUP * GROUPS}}$`).test(letters) ? grouped(letters) : null;
}
