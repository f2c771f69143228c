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
  /** What differs here and may be due to the version that made the record, a sentence each; it speaks not against it. */
  readonly unheld: readonly string[];
}

/**
 * Checks a record against its hash, its marks against what they were made from, and that against sheet, seed and bank of
 * questions.
 *
 * A hash shows that a record was not changed by accident or by someone who does not change the hash as well; it is no
 * signature. Nor can it be seen whether a try went as recorded: only whether it was to be made, and what it is worth.
 *
 * Plan, bank of questions, marks and locks may differ from version to version, so what another version made is not held
 * against them.
 *
 * @param hash - as printed on the result, 64 hexadecimal digits in either case
 * @param appVersion - the version that checks
 */
export async function checkRecord(
  record: SittingRecord,
  hash: string,
  sha256: Sha256,
  appVersion: string,
): Promise<RecordCheck> {
  const isUnchanged = isSameHash(await recordHash(record, sha256), hash);
  const isMarkedRight = canonicalJson(markedAgain(record)) === canonicalJson(record.marking);
  const hashes = await profileHashes(record.sheet, sha256);
  const hasSameProfiles = canonicalJson(hashes) === canonicalJson(record.profileHashes);
  const rules = rulesMisfit(record);
  const made = [planMisfit(record), answersMisfit(record)].filter((one) => one !== undefined);
  const firm = [...(isUnchanged ? [] : [CHANGED]), ...(rules === undefined ? [] : [rules])];
  const byVersion = [
    ...(isMarkedRight ? [] : ["The marks do not follow from the tries on record, by the rules of this version."]),
    ...(hasSameProfiles ? [] : ["A lock of the record is not the one this version has under its name."]),
    ...made,
  ];
  const isOwn = record.appVersion === appVersion;
  return {
    isUnchanged,
    isMarkedRight,
    hasSameProfiles,
    fitsSheet: rules === undefined && made.length === 0,
    problems: isOwn ? [...firm, ...byVersion] : firm,
    unheld: isOwn || byVersion.length === 0 ? [] : [otherVersion(record.appVersion, appVersion), ...byVersion],
  };
}

/** Why what differs does not speak against a record. */
const otherVersion = (made: string, here: string) =>
  `It was made by version ${made}, and this is version ${here}: what differs may be the version and not the record. Have it checked by version ${made}.`;
