import { canonicalJson } from "../../drill/canonicalJson";
import { markingFigures } from "../../drill/marking/markingFigures";
import { sheetSha256 } from "../../drill/sheet/sheetFingerprint";
import { CHANGED, isSameHash, recordHash } from "../hashedRecord";
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
  /** What is wrong, in sentences; none for a sound record. */
  readonly problems: readonly string[];
  /** What differs here and may be due to the version that made the record, a sentence each; it speaks not against it. */
  readonly unheld: readonly string[];
  /** What was not checked, a sentence each: openings that no recording is there for. */
  readonly unchecked: readonly string[];
  /** How many tries were replayed from their recordings. */
  readonly replayed: number;
}

/** No motions are at hand but those of the record. */
export const NONE_BESIDE: MotionsBeside = () => undefined;

const placesText = (places: readonly number[]) => {
  const [last] = places.slice(-1);
  return places.length === 1 ? `Try ${last}` : `Tries ${places.slice(0, -1).join(", ")} and ${last}`;
};

/** Which openings were not made again, and why. */
function notReplayed({ motions, tries }: SittingRecord, missing: readonly number[]): string[] {
  if (missing.length === 0) return [];
  const dialed = tries.filter(({ kind, isBrokenOff }) => kind === "dialing" && !isBrokenOff).length;
  if (motions === undefined && missing.length === dialed) {
    return ["There are no recordings in this record: its openings were not replayed."];
  }
  const has = missing.length === 1 ? "has no recording: it was" : "have no recording: they were";
  return [`${placesText(missing)} ${has} not replayed.`];
}

const isSame = (one: unknown, other: unknown) => canonicalJson(one) === canonicalJson(other);

/** Whether the marks follow from the tries: to the word, or in their figures where another version worded them. */
function areMarksRight(record: SittingRecord, isOwn: boolean): boolean {
  const again = markedAgain(record);
  return isOwn ? isSame(again, record.marking) : isSame(markingFigures(again), markingFigures(record.marking));
}

/** What follows from the sheet of a record by the code of this version: a sentence for each thing that differs. */
function madeBySheet(record: SittingRecord, isOwn: boolean) {
  const isMarkedRight = areMarksRight(record, isOwn);
  const hasSameProfiles = isSame(profileHashes(record.sheet), record.profileHashes);
  const misfits = [planMisfit(record), answersMisfit(record)].filter((one) => one !== undefined);
  const sentences = [
    ...(isMarkedRight ? [] : ["The marks do not follow from the tries on record, by the rules of this version."]),
    ...(hasSameProfiles ? [] : ["A lock of the record is not the one this version has under its name."]),
    ...misfits,
  ];
  return { isMarkedRight, hasSameProfiles, misfits, sentences };
}

/** Whether the fingerprint on record is that of the sheet on record; records before 0.3.0 have none. */
const fingerprintMisfit = ({ sheet, sheetSha256: found }: SittingRecord) =>
  found === undefined || found === sheetSha256(sheet)
    ? []
    : ["The sheet's fingerprint on record is not that of the sheet on record."];

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
  const { isMarkedRight, hasSameProfiles, misfits, sentences } = madeBySheet(record, isOwn);
  const rules = rulesMisfit(record);
  const motions = replayedTries(record, beside);
  const firm = [
    ...(isUnchanged ? [] : [CHANGED]),
    ...implausible(record),
    ...(rules === undefined ? [] : [rules]),
    ...fingerprintMisfit(record),
    ...motions.problems,
  ];
  const byVersion = [...sentences, ...motions.byVersion].filter((one) => !firm.includes(one));
  return {
    isUnchanged,
    isMarkedRight,
    hasSameProfiles,
    fitsSheet: rules === undefined && misfits.length === 0,
    problems: isOwn ? [...firm, ...byVersion] : firm,
    unheld: isOwn || byVersion.length === 0 ? [] : [otherVersion(record.appVersion, appVersion), ...byVersion],
    unchecked: notReplayed(record, motions.missing),
    replayed: motions.replayed.length,
  };
}

/** Why what differs does not speak against a record. */
const otherVersion = (made: string, here: string) =>
  `Version ${made} made it, and this is version ${here}: what differs may be the version and not the record. Have it checked by version ${made}.`;
