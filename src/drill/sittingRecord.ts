import type { Milliseconds } from "../lock/dial";
import { canonicalJson } from "./canonicalJson";
import { markingScheme } from "./marking/markingScheme";
import { type Marking, markSitting, type SittingResults } from "./marking/markSitting";
import type { TryResult } from "./marking/tryResult";
import type { Sheet } from "./sheet/sheet";
import { stationProfile } from "./sheet/stationProfile";
import type { SittingEnd } from "./sittingMachine";

/** Digest of a text (as UTF-8), 64 hexadecimal digits. The pure layer has none: Web Crypto or Node's is passed in. */
export type Sha256 = (text: string) => string | Promise<string>;

/** One answer of a sitting. */
export interface RecordedAnswer {
  readonly questionId: string;
  /** Index of the choice taken, as the bank numbers them. */
  readonly choice: number;
  readonly isRight: boolean;
}

/** What is put on record when a sitting ends; times and the version come from the caller. */
export interface SittingFacts {
  readonly sheet: Sheet;
  /** Seed of order, combinations and questions. */
  readonly seed: number;
  readonly appVersion: string;
  /** Local name of the person, if one is kept. */
  readonly person?: string | undefined;
  /** When it was started, ISO 8601. */
  readonly startedAt: string;
  readonly worked_ms: Milliseconds;
  readonly pauses: number;
  readonly interruptions: number;
  readonly tries: readonly TryResult[];
  readonly answers: readonly RecordedAnswer[];
  readonly ended: SittingEnd;
}

/** The record of a sitting: plain JSON, whole in itself. */
export interface SittingRecord extends SittingFacts {
  readonly format: "gatefall-sitting";
  readonly version: 1;
  /** What it is not. */
  readonly notice: string;
  /** SHA-256 of the canonical JSON of each station's profile, in the order of the stations. */
  readonly profileHashes: readonly string[];
  readonly marking: Marking;
}

/** Stands on every record and every sheet printed from one. */
export const NOTICE = "Practice result, not a certificate.";

const resultsOf = ({ tries, answers, ended }: SittingFacts): SittingResults => ({
  tries,
  answers: answers.map(({ isRight }) => isRight),
  ended,
});

const markedAgain = (facts: SittingFacts): Marking =>
  markSitting(markingScheme(facts.sheet), facts.sheet, resultsOf(facts));

const hashesOf = (sheet: Sheet, sha256: Sha256): Promise<string[]> =>
  Promise.all(sheet.stations.map(async (station) => sha256(canonicalJson(stationProfile(station)))));

/** The record of a sitting, marked. */
export async function sittingRecord(facts: SittingFacts, sha256: Sha256): Promise<SittingRecord> {
  return {
    format: "gatefall-sitting",
    version: 1,
    notice: NOTICE,
    ...facts,
    profileHashes: await hashesOf(facts.sheet, sha256),
    marking: markedAgain(facts),
  };
}

/** SHA-256 of a record: of its canonical JSON, so that neither order of keys nor white space matters. */
export async function recordHash(record: SittingRecord, sha256: Sha256): Promise<string> {
  return sha256(canonicalJson(record));
}

/** What checking a record came to. */
export interface RecordCheck {
  /** Whether the hash is that of the record. */
  readonly isUnchanged: boolean;
  /** Whether the marks follow from the tries and answers on record. */
  readonly isMarkedRight: boolean;
  /** Whether the profiles are those that this version has under their names. */
  readonly hasSameProfiles: boolean;
  /** What is wrong, in sentences; none for a sound record. */
  readonly problems: readonly string[];
}

/**
 * Checks a record against its hash, and its marks against what they were made from.
 *
 * A hash shows that a record was not changed by accident or by someone who does not change the hash as well; it is no
 * signature.
 *
 * @param hash - as printed on the result, 64 hexadecimal digits in either case
 */
export async function checkRecord(record: SittingRecord, hash: string, sha256: Sha256): Promise<RecordCheck> {
  const isUnchanged = (await recordHash(record, sha256)) === hash.trim().toLowerCase();
  const isMarkedRight = canonicalJson(markedAgain(record)) === canonicalJson(record.marking);
  const hashes = await hashesOf(record.sheet, sha256);
  const hasSameProfiles = canonicalJson(hashes) === canonicalJson(record.profileHashes);
  const findings: readonly (readonly [boolean, string])[] = [
    [isUnchanged, "The record is not the one that the hash was made from: it or the hash was changed."],
    [isMarkedRight, "The marks do not follow from the tries on record, by the rules of this version."],
    [hasSameProfiles, "A lock of the record is not the one this version has under its name."],
  ];
  return {
    isUnchanged,
    isMarkedRight,
    hasSameProfiles,
    problems: findings.flatMap(([isFine, problem]) => (isFine ? [] : [problem])),
  };
}
