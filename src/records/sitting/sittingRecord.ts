import { canonicalJson } from "../../drill/canonicalJson";
import { markingScheme } from "../../drill/marking/markingScheme";
import { type Marking, markSitting, type SittingResults } from "../../drill/marking/markSitting";
import type { TryResult } from "../../drill/marking/tryResult";
import { sha256Hex } from "../../drill/sha256";
import type { Sheet } from "../../drill/sheet/sheet";
import { sheetSha256 } from "../../drill/sheet/sheetFingerprint";
import { stationProfile } from "../../drill/sheet/stationProfile";
import type { SittingBreak, SittingEnd } from "../../drill/sitting/sittingMemory";
import type { Milliseconds } from "../../lock/dial";

/** One answer of a sitting. */
export interface RecordedAnswer {
  readonly questionId: string;
  /** Index of the choice taken, as the bank numbers them. */
  readonly choice: number;
  readonly isRight: boolean;
}

/**
 * Where the seed of a sitting is from: drawn for it alone by its bench, set by its sheet, given in the address, for practice, or
 * drawn by a class server when it began.
 */
export type SeedOrigin = "drawn" | "sheet" | "address" | "server";

/** The machine's clock jumped in the middle of a sitting: somebody set it, or the machine slept. */
export interface ClockJump {
  /** Working time when it was noticed. */
  readonly at_ms: Milliseconds;
  /** How far; negative where it was set back. */
  readonly by_ms: Milliseconds;
}

/** What is put on record when a sitting ends; times and the version come from the caller. */
export interface SittingFacts {
  readonly sheet: Sheet;
  /** Seed of order, combinations and questions. */
  readonly seed: number;
  readonly appVersion: string;
  /** Local name of the person, if one is kept. */
  readonly person?: string | undefined;
  /** Id of the person in the logbook, if one is known; since version 0.3.0. */
  readonly personId?: string | undefined;
  /** Where the seed is from; since version 0.3.0. */
  readonly seedFrom?: SeedOrigin | undefined;
  /**
   * More time than others have, percent: the sheet on record has its times lengthened by it. Left out where nobody gave any;
   * only a class server does.
   */
  readonly extraTime_percent?: number | undefined;
  /** When it was started, ISO 8601. */
  readonly startedAt: string;
  readonly worked_ms: Milliseconds;
  readonly pauses: number;
  readonly interruptions: number;
  /** Every pause and reload with its length, in order; since version 0.3.0. */
  readonly breaks?: readonly SittingBreak[] | undefined;
  /** Every jump of the machine's clock, in order; since version 0.3.0. */
  readonly clockJumps?: readonly ClockJump[] | undefined;
  readonly tries: readonly TryResult[];
  /**
   * The motion of every try, packed as the logbook packs it and in base64; null where there is none. Since version 0.3.0.
   */
  readonly motions?: readonly (string | null)[] | undefined;
  readonly answers: readonly RecordedAnswer[];
  readonly ended: SittingEnd;
}

/** The record of a sitting: plain JSON, whole in itself. */
export interface SittingRecord extends SittingFacts {
  readonly format: "gatefall-sitting";
  readonly version: 1;
  /** What it is not. */
  readonly notice: string;
  /** SHA-256 of what counts in the sheet; since version 0.3.0. */
  readonly sheetSha256?: string | undefined;
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

/** The marks that follow from what is on record, by the rules of this version. */
export const markedAgain = (facts: SittingFacts): Marking =>
  markSitting(markingScheme(facts.sheet), facts.sheet, resultsOf(facts));

/** SHA-256 of each station's lock, as this version has it under its name; the short name, younger than records, is left out. */
export const profileHashes = (sheet: Sheet): string[] =>
  sheet.stations.map((station) => {
    const { short: _short, ...lock } = stationProfile(station);
    return sha256Hex(canonicalJson(lock));
  });

/** The record of a sitting, marked. */
export function sittingRecord(facts: SittingFacts): SittingRecord {
  return {
    format: "gatefall-sitting",
    version: 1,
    notice: NOTICE,
    ...facts,
    sheetSha256: sheetSha256(facts.sheet),
    profileHashes: profileHashes(facts.sheet),
    marking: markedAgain(facts),
  };
}
