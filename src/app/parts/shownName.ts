import { harmlessName } from "../../lock/harmlessText";

/** Letters written from right to left: the blocks of their scripts. Source: Unicode Standard Annex 9, and 44 on Bidi_Class. */
const RIGHT_TO_LEFT = /[\u0590-\u08FF\uFB1D-\uFDFF\uFE70-\uFEFC\u{10800}-\u{10FFF}\u{1E800}-\u{1EFFF}]/u;
/** A text in a direction of its own, by its first letter (FSI), and its end (PDI). Source: Unicode Standard Annex 9, 2.4. */
const ISOLATE = "\u2068";
const END = "\u2069";

/**
 * A name as it is shown in a sentence, a row or a label: safe, and where it is written from right to left it turns nothing about
 * that stands beside it, such as a number or a comma.
 *
 * Only for showing, and only last: `harmlessText` takes what isolates it for a trick.
 */
export function shownName(name: string): string {
  const safe = harmlessName(name);
  return RIGHT_TO_LEFT.test(safe) ? `${ISOLATE}${safe}${END}` : safe;
}
