import { deflateSync, strFromU8, strToU8 } from "fflate";
import { inflateBounded } from "../../trace/inflateBounded";
import { TraceError } from "../../trace/traceError";
import { drillProblem } from "../drillWords";
import { SheetError } from "../sheetError";
import { parseSheet } from "./parseSheet";
import type { Sheet } from "./sheet";

/** Stands before the text of a sheet, so that later ways of packing it can be told apart. */
const MARK = "s1.";

/** Longest text that is made or read, characters; longer ones break on their way through mail and browsers. */
export const MOST_CHARACTERS = 16_000;

/** Most JSON that a link may unpack to, bytes: a few characters can stand for gigabytes. */
const MOST_BYTES = 400_000;

/** Bytes as base64url without padding (RFC 4648, section 5). */
function toText(bytes: Uint8Array): string {
  const characters = Array.from(bytes, (byte) => String.fromCharCode(byte)).join("");
  return btoa(characters).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}

function toBytes(text: string): Uint8Array {
  if (!/^[\w-]+$/.test(text) || text.length % 4 === 1) throw new SheetError(drillProblem("link-characters", []));
  const characters = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
  return Uint8Array.from(characters, (character) => character.charCodeAt(0));
}

function jsonOf(packed: Uint8Array): unknown {
  try {
    return JSON.parse(strFromU8(inflateBounded(packed, MOST_BYTES)));
  } catch (error) {
    const isTooMuch = error instanceof TraceError && error.code === "unpacks-to-more";
    throw new SheetError(drillProblem(isTooMuch ? "link-too-much" : "link-damaged", []));
  }
}

/**
 * A whole sheet as text for the fragment of an address, deflated, in letters that need no escaping.
 *
 * @throws {SheetError} for a sheet too large for a link; export it as a file instead
 */
export function sheetToLink(sheet: Sheet): string {
  const text = `${MARK}${toText(deflateSync(strToU8(JSON.stringify(sheet)), { level: 9 }))}`;
  if (text.length <= MOST_CHARACTERS) return text;
  throw new SheetError(drillProblem("sheet-too-large", [], { characters: text.length, most: MOST_CHARACTERS }));
}

/**
 * The sheet that a link carries; whatever comes in is checked like a file.
 *
 * @param text - fragment without its "#"
 * @throws {SheetError} for text that carries none, and for a sheet that is not sound
 */
export function sheetFromLink(text: string): Sheet {
  if (!text.startsWith(MARK)) throw new SheetError(drillProblem("link-unknown", []));
  if (text.length > MOST_CHARACTERS) throw new SheetError(drillProblem("link-too-long", [], { most: MOST_CHARACTERS }));
  return parseSheet(jsonOf(toBytes(text.slice(MARK.length))));
}
