import { unreadable } from "../motionError";

/** Bytes that one call turns into characters: an argument list has its limits. */
const CHUNK = 0x8000;

/** Bytes as base64 text, for a JSON file. */
export function toBase64(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += CHUNK) text += String.fromCharCode(...bytes.subarray(at, at + CHUNK));
  return btoa(text);
}

/**
 * Base64 text as bytes. It takes the one spelling that `toBase64` makes (RFC 4648, section 3.5: canonical), without spaces,
 * so that two texts of the same bytes are the same text.
 *
 * @throws {MotionError} `bad-trace`
 */
export function fromBase64(text: string): Uint8Array {
  let characters: string | null = null;
  try {
    characters = atob(text);
  } catch {}
  if (characters === null || btoa(characters) !== text) throw unreadable("trace-not-base64");
  return Uint8Array.from(characters, (character) => character.charCodeAt(0));
}
