import { canonicalJson } from "../../drill/canonicalJson";
import { markingFigures } from "../../drill/marking/markingFigures";
import type { TryResult } from "../../drill/marking/tryResult";
import { sheetSha256 } from "../../drill/sheet/sheetFingerprint";
import { mayKeepMotion } from "../../realdial/sources/sourceDescription";
import type { Problem } from "../../wording/problem";
import { isSameHash, recordHash } from "../hashedRecord";
import { checkProblem } from "./checkWords";
import { drawnMisfits } from "./drawnTries";
import { implausible } from "./plausible";
import { answersMisfit, planMisfit, rulesMisfit } from "./recordFit";
import { type MotionsBeside, replayedTries } from "./replayedTries";
import { markedAgain, profileHashes, type SittingRecord } from "./sittingRecord";

/** What checking a record came to. */
export interface RecordCheck {
  /** Whether the hash is that of the record. */
  readonly isUnchanged: boolean;
  /** Whether the marks follow from the tries and answers on record. */
  readonly isMarkedRight: boolean;
  /** Whether the profiles are those that this version has under their names. */
  readonly hasSameProfiles: boolean;
  /** Whether pauses, reloads and end, the tries, and the answers are such as the sheet and the seed lead to. */
  readonly fitsSheet: boolean;
  /** What is wrong; none for a sound record. */
  readonly problems: readonly Problem[];
  /** What differs here and may be due to the version that made the record; it does not speak against it. */
  readonly unheld: readonly Problem[];
  /** What was not checked: openings that no recording is there for. */
  readonly unchecked: readonly Problem[];
  /** How many tries were replayed from their recordings. */
  readonly replayed: number;
}

/** No motions are at hand but those of the record. */
export const NONE_BESIDE: MotionsBeside = () => undefined;

/** A finding about tries: about one, or about several. */
function aboutTries(found: readonly number[], one: "one-not-replayed" | "one-kept-none"): Problem[] {
  const [places, last] = [found.slice(0, -1), found.at(-1)];
  if (last === undefined) return [];
  if (places.length === 0) return [checkProblem(one, [], { place: last })];
  return [checkProblem(one === "one-kept-none" ? "some-kept-none" : "some-not-replayed", [], { places, last })];
}

/** Whether the hand chose that no motion of a try was kept. */
const isByChoice = (one: TryResult | undefined) => one?.kind === "dialing" && !mayKeepMotion(one);

/** Which openings were not made again, and why. */
function notReplayed({ motions, tries }: SittingRecord, missing: readonly number[]): Problem[] {
  if (missing.length === 0) return [];
  const dialed = tries.filter(({ kind, isBrokenOff }) => kind === "dialing" && !isBrokenOff).length;
  if (motions === undefined && missing.length === dialed) {
    return [checkProblem("nothing-replayed", [])];
  }
  const chosen = missing.filter((place) => isByChoice(tries[place - 1]));
  const lacking = missing.filter((place) => !chosen.includes(place));
  return [...aboutTries(lacking, "one-not-replayed"), ...aboutTries(chosen, "one-kept-none")];
}

const isSame = (one: unknown, other: unknown) => canonicalJson(one) === canonicalJson(other);

/** Whether a problem was found already, by another way. */
const isAmong = (one: Problem, found: readonly Problem[]) =>
  found.some((other) => JSON.stringify(other) === JSON.stringify(one));

/** Whether the marks follow from the tries: to the word, or in their figures where another version worded them. */
function areMarksRight(record: SittingRecord, isOwn: boolean): boolean {
  const again = markedAgain(record);
  return isOwn ? isSame(again, record.marking) : isSame(markingFigures(again), markingFigures(record.marking));
}

/** What follows from the sheet of a record by the code of this version: each thing that differs. */
function madeBySheet(record: SittingRecord, isOwn: boolean) {
  const isMarkedRight = areMarksRight(record, isOwn);
  const hasSameProfiles = isSame(profileHashes(record.sheet), record.profileHashes);
  const misfits = [planMisfit(record), answersMisfit(record)].filter((one) => one !== undefined);
  const differing = [
    ...(isMarkedRight ? [] : [checkProblem("other-marks", [])]),
    ...(hasSameProfiles ? [] : [checkProblem("other-locks", [])]),
    ...misfits,
    ...drawnMisfits(record),
  ];
  return { isMarkedRight, hasSameProfiles, misfits, differing };
}

/** Whether the fingerprint on record is that of the sheet on record; records before 0.3.0 have none. */
const fingerprintMisfit = ({ sheet, sheetSha256: found }: SittingRecord) =>
  found === undefined || found === sheetSha256(sheet) ? [] : [checkProblem("other-fingerprint", [])];

/**
 * Checks a record: its hash; whether what it says is possible at all; its tries, answers and marks against sheet, seed
 * and bank of questions; and every try at dialing against its recording, which is replayed on the lock.
 *
 * A hash shows that a record was not changed by accident or by someone who does not change the hash as well; it is no
 * signature. Who knows the program can still make up a whole record with a recording of a simulated hand, or have
 * somebody else sit it: no check of a file can tell.
 *
 * Plan, bank of questions, marks, locks and the reading of a hand may differ from version to version, so what another
 * version made is not held against them. Hash, counts, times, and that an opening's recording opens the lock, hold for
 * every version.
 *
 * @param record - as `readSittingRecord` read it
 * @param hash - as printed on the result, 64 hexadecimal digits in either case
 * @param appVersion - the version that checks
 * @param beside - motions that were saved beside the record
 */
export function checkRecord(
  record: SittingRecord,
  hash: string,
  appVersion: string,
  beside: MotionsBeside = NONE_BESIDE,
): RecordCheck {
  const isUnchanged = isSameHash(recordHash(record), hash);
  const isOwn = record.appVersion === appVersion;
  const { isMarkedRight, hasSameProfiles, misfits, differing } = madeBySheet(record, isOwn);
  const rules = rulesMisfit(record);
  const motions = replayedTries(record, beside);
  const firm = [
    ...(isUnchanged ? [] : [checkProblem("changed", [])]),
    ...implausible(record),
    ...(rules === undefined ? [] : [rules]),
    ...fingerprintMisfit(record),
    ...motions.problems,
  ];
  const byVersion = [...differing, ...motions.byVersion].filter((one) => !isAmong(one, firm));
  return {
    isUnchanged,
    isMarkedRight,
    hasSameProfiles,
    fitsSheet: rules === undefined && misfits.length === 0,
    problems: isOwn ? [...firm, ...byVersion] : firm,
    unheld:
      isOwn || byVersion.length === 0
        ? []
        : [checkProblem("other-version", [], { made: record.appVersion, here: appVersion }), ...byVersion],
    unchecked: notReplayed(record, motions.missing),
    replayed: motions.replayed.length,
  };
}
