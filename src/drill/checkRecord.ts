import { canonicalJson } from "./canonicalJson";
import { CHANGED, isSameHash } from "./hashedRecord";
import { answersMisfit, planMisfit, rulesMisfit } from "./recordFit";
import { markedAgain, profileHashes, recordHash, type Sha256, type SittingRecord } from "./sittingRecord";

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
}

/**
 * Checks a record against its hash, its marks against what they were made from, and that against sheet, seed and bank of
 * questions.
 *
 * A hash shows that a record was not changed by accident or by someone who does not change the hash as well; it is no
 * signature. Nor can it be seen whether a try went as recorded: only whether it was to be made, and what it is worth.
 *
 * @param hash - as printed on the result, 64 hexadecimal digits in either case
 */
export async function checkRecord(record: SittingRecord, hash: string, sha256: Sha256): Promise<RecordCheck> {
  const isUnchanged = isSameHash(await recordHash(record, sha256), hash);
  const isMarkedRight = canonicalJson(markedAgain(record)) === canonicalJson(record.marking);
  const hashes = await profileHashes(record.sheet, sha256);
  const hasSameProfiles = canonicalJson(hashes) === canonicalJson(record.profileHashes);
  const misfits = [rulesMisfit(record), planMisfit(record), answersMisfit(record)].filter((one) => one !== undefined);
  const findings: readonly (readonly [boolean, string])[] = [
    [isUnchanged, CHANGED],
    [isMarkedRight, "The marks do not follow from the tries on record, by the rules of this version."],
    [hasSameProfiles, "A lock of the record is not the one this version has under its name."],
  ];
  return {
    isUnchanged,
    isMarkedRight,
    hasSameProfiles,
    fitsSheet: misfits.length === 0,
    problems: [...findings.flatMap(([isFine, problem]) => (isFine ? [] : [problem])), ...misfits],
  };
}
