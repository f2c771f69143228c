import { canonicalJson } from "../../drill/canonicalJson";
import { DrillError } from "../../drill/drillError";
import type { Marking } from "../../drill/marking/markSitting";
import { isRight, type TryResult } from "../../drill/marking/tryResult";
import type { Sheet } from "../../drill/sheet/sheet";
import type { Milliseconds } from "../../lock/dial";
import { isDoubted } from "../../realdial/sources/dialDoubt";
import type { HashedRecord } from "../../records/hashedRecord";
import { motionOfText } from "../../records/motion/traceCodec";
import { checkRecord } from "../../records/sitting/checkRecord";
import { readSittingRecord } from "../../records/sitting/readSittingRecord";
import { markedAgain, type SeedOrigin, type SittingRecord } from "../../records/sitting/sittingRecord";
import { type Outcome, outcomeOf } from "../../records/sitting/sittingShown";
import { type Finding, failing, type Problem } from "../../wording/problem";
import { findingProblem } from "./sittingFindings";

/** A sitting as a class server gave it out. */
export interface GivenSitting {
  readonly personId: string;
  /** With the extra time of that person in it. */
  readonly sheet: Sheet;
  readonly seed: number;
  readonly seedFrom: SeedOrigin;
  /** Percent; 0 for none. */
  readonly extraTime_percent: number;
  /** When the server gave it, and until when it was to come in: by the server's clock, milliseconds since 1970. */
  readonly begunAt: Milliseconds;
  readonly until: Milliseconds;
}

/** A try as it was sent when it had ended. */
export interface SentTry {
  /** From 0. */
  readonly index: number;
  readonly result: TryResult;
  /** As it is packed in a record; null where none is kept. */
  readonly motion: string | null;
  /** By the server's clock. */
  readonly receivedAt: Milliseconds;
  /** How long it waited at its bench from its end, by the bench's clock. */
  readonly waited_ms: Milliseconds;
}

/** The record of a sitting as it came in. */
export interface ReceivedSitting {
  readonly personId: string;
  /** The record with its hash, parsed JSON from outside. */
  readonly body: unknown;
  /** By the server's clock. */
  readonly receivedAt: Milliseconds;
}

/** What a server makes of a sitting by its own marking. */
export interface SittingJudgment {
  /** By the server's own marks; null where something does not agree, for then it shows nothing. */
  readonly outcome: Outcome | null;
  /** The server's own marks; null for what cannot be read. */
  readonly marking: Marking | null;
  /** What does not agree, and speaks against it. */
  readonly problems: readonly Problem[];
  /** What is to be known and does not speak against it: late, without a network, not replayed, of another version. */
  readonly remarks: readonly Problem[];
  readonly isLate: boolean;
  readonly reloads: number;
  /** Share of its tries and answers that are right, of all that the sheet asks; in [0, 1]. */
  readonly right: number;
  readonly worked_ms: Milliseconds;
  /** Tries whose turns are in doubt. */
  readonly doubted: number;
}

/** Waiting shorter than this is what any network does. */
const USUAL_WAIT: Milliseconds = 60_000;

/** A clock that runs a little slower than another, and the moment that an answer is under way. */
const CLOCKS_DIFFER: Milliseconds = 10_000;

const seconds = (time: Milliseconds) => Math.round(time / 1000);

/** Whether what is on record is what was given. */
function misfitsOfGiven(record: SittingRecord, given: GivenSitting, received: ReceivedSitting): readonly Problem[] {
  const { sheet, seed, seedFrom, extraTime_percent = 0, worked_ms } = record;
  const passed = received.receivedAt - given.begunAt;
  const findings: readonly Finding[] = [
    [canonicalJson(sheet) === canonicalJson(given.sheet), findingProblem("other-sheet-than-given", [])],
    [seed === given.seed, findingProblem("other-seed-than-given", [], { found: seed, given: given.seed })],
    [seedFrom === given.seedFrom, findingProblem("other-origin", [])],
    [
      extraTime_percent === given.extraTime_percent,
      findingProblem("other-extra-time", [], { found: extraTime_percent, given: given.extraTime_percent }),
    ],
    [received.personId === given.personId, findingProblem("other-person", [])],
    [
      worked_ms <= passed + CLOCKS_DIFFER,
      findingProblem("more-time-than-passed", [], { worked: seconds(worked_ms), passed: seconds(passed) }),
    ],
  ];
  return failing(findings);
}

/** Tries that were sent early must be those of the record. */
function misfitsOfSent({ tries, motions }: SittingRecord, sent: readonly SentTry[]): readonly Problem[] {
  return sent.flatMap(({ index, result, motion }) => {
    const place = index + 1;
    const one = tries[index];
    if (one === undefined) return [findingProblem("try-not-in-record", [], { place })];
    const packed = motions?.[index] ?? null;
    const isSame = canonicalJson(one) === canonicalJson(result) && (packed === null || packed === motion);
    return isSame ? [] : [findingProblem("try-not-as-sent", [], { place })];
  });
}

/** What the network did in it. */
function networkRemarks({ tries }: SittingRecord, sent: readonly SentTry[], received: ReceivedSitting): Problem[] {
  const early = sent.filter(({ receivedAt }) => receivedAt <= received.receivedAt);
  const behind = tries.length - new Set(early.map(({ index }) => index)).size;
  const waits = early.map(({ waited_ms }) => waited_ms).filter((waited) => waited > USUAL_WAIT);
  return [
    ...(behind > 0 ? [findingProblem("tries-with-the-end", [], { count: behind, of: tries.length })] : []),
    ...(waits.length > 0
      ? [findingProblem("tries-waited", [], { count: waits.length, longest: seconds(Math.max(...waits)) })]
      : []),
  ];
}

/** Share of all that the sheet asks that is right. */
export function shareRight({ sheet, tries, answers }: Pick<SittingRecord, "sheet" | "tries" | "answers">): number {
  const asked = sheet.stations.reduce((sum, { repetitions }) => sum + repetitions, 0);
  const questions = (sheet.sitting?.questions?.topics ?? []).reduce((sum, { count }) => sum + count, 0);
  const made = tries.filter((one) => {
    const station = sheet.stations[one.station];
    return station !== undefined && isRight(one, station);
  }).length;
  return Math.min(1, (made + answers.filter(({ isRight: right }) => right).length) / (asked + questions));
}

const UNREADABLE = {
  outcome: null,
  marking: null,
  remarks: [],
  reloads: 0,
  right: 0,
  worked_ms: 0,
  doubted: 0,
} as const;

function read(body: unknown): HashedRecord<SittingRecord> | Problem {
  try {
    return readSittingRecord(body);
  } catch (error) {
    if (error instanceof DrillError) return findingProblem("not-readable", [], { why: error.message });
    throw error;
  }
}

/** The motion of a try as it was sent, where the record does not bring it any more. */
const motionsSent = (sent: readonly SentTry[]) => (index: number) => {
  const motion = sent.find((one) => one.index === index)?.motion ?? null;
  return motion === null ? undefined : motionOfText(motion);
};

/**
 * Replays and marks a sitting anew, and compares it with what was given out for it and what was sent as it went on.
 *
 * That the network was gone speaks against nobody: it is a remark. So is a record that came in late.
 *
 * @param sent - tries as they were sent, in any order
 * @param appVersion - the server's own
 */
export function judgeSitting(
  given: GivenSitting,
  sent: readonly SentTry[],
  received: ReceivedSitting,
  appVersion: string,
): SittingJudgment {
  const isLate = received.receivedAt > given.until;
  const found = read(received.body);
  if ("code" in found) return { ...UNREADABLE, isLate, problems: [found] };
  const { record, sha256 } = found;
  const check = checkRecord(record, sha256, appVersion, motionsSent(sent));
  const problems = [...misfitsOfGiven(record, given, received), ...misfitsOfSent(record, sent), ...check.problems];
  const marking = markedAgain(record);
  return {
    outcome: problems.length > 0 ? null : outcomeOf(marking.verdict, record.ended),
    marking,
    problems,
    remarks: [
      ...(isLate ? [findingProblem("sent-late", [])] : []),
      ...networkRemarks(record, sent, received),
      ...check.unheld,
      ...check.unchecked,
    ],
    isLate,
    reloads: record.interruptions,
    right: shareRight(record),
    worked_ms: record.worked_ms,
    doubted: record.tries.filter((one) => "doubts" in one && isDoubted(one)).length,
  };
}
