import { canonicalJson } from "../../src/drill/canonicalJson";
import { fromBase64 } from "../../src/records/motion/base64";
import { decodeTrace } from "../../src/records/motion/traceCodec";
import type { Chance } from "../../src/statistics/chance";
import { sha256 } from "../support/keptRecord";
import { type Json, likeIt, type Place, placeText, putAt, valueAt } from "./tamper";

/** Places and why no check can notice a change there. */
export type Exceptions = readonly (readonly [place: RegExp, reason: string])[];

/** What a forger with a new hash can change unnoticed, because nothing else in a record follows from it. */
const CANNOT_BE_NOTICED: Exceptions = [
  [/^person(Id)?$/, "a name hangs on nothing: whoever gives the file tells whose it is"],
  [/^startedAt$/, "a date hangs on nothing but the clock of that day"],
  [/^worked_ms$/, "between the tries a candidate may take any time; tries longer than it are named"],
  [/^clockJumps/, "a jump of the clock leaves no other trace"],
  [
    /^sheet\.(title|purpose|instructions|cautions|stations\[\d\]\.(id|title))/,
    "words do not count: the fingerprint shown covers what does",
  ],
  [/^appVersion$/, "this version made all of it again alike, so nothing hangs on which one made it"],
  [/^seedFrom$/, "a seed looks the same wherever it is from"],
];

/** A saved record. @param hash - its own where left out */
export const fileOf = (record: Json, hash = sha256(canonicalJson(record))) => JSON.stringify({ sha256: hash, record });

/** How far each try of a sitting stops past its numbers: now and then too far. */
export const someErrors = (chance: Chance) =>
  Array.from({ length: 4 }, () =>
    Array.from({ length: 3 }, () => (chance() < 0.15 ? 4 : Math.floor(3 * chance()) / 4)),
  );

/** Changes one field. @returns what it was and is, or null where the change changes nothing */
export function forge(record: Json, at: Place, chance: Chance): string | null {
  const before = valueAt(record, at);
  const after = likeIt(before, chance);
  if (after !== undefined && canonicalJson(after) === canonicalJson(before)) return null;
  putAt(record, at, after);
  const short = (value: Json | undefined) => (JSON.stringify(value) ?? "nothing").slice(0, 80);
  return `${placeText(at)}: ${short(before)} -> ${short(after)}`;
}

/** Recordings keep whole milliseconds, so a time that is off by less says the same. */
const isRounding = (at: Place, was: Json, is: Json) =>
  at.at(-1) === "time_ms" && Math.abs(Number(was) - Number(is)) <= 1;

/** Packed another way, a motion stays what it was: the last bits of a packed one are of no account. */
function isSameMotion(at: Place, was: Json, is: Json): boolean {
  if (at[0] !== "motions" || typeof was !== "string" || typeof is !== "string") return false;
  const unpacked = (text: string) => JSON.stringify(decodeTrace(fromBase64(text)));
  try {
    return unpacked(was) === unpacked(is);
  } catch {
    return false;
  }
}

/** Whether a change of a record's field that was hashed anew may come out as sound. */
export const isLetThrough = (genuine: Json, forged: Json, at: Place): boolean =>
  CANNOT_BE_NOTICED.some(([place]) => place.test(placeText(at))) ||
  isSameMotion(at, valueAt(genuine, at), valueAt(forged, at)) ||
  isRounding(at, valueAt(genuine, at), valueAt(forged, at));
