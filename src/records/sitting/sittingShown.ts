import { DrillError } from "../../drill/drillError";
import type { Verdict } from "../../drill/marking/evidence";
import { sheetSha256, shortFingerprint } from "../../drill/sheet/sheetFingerprint";
import type { Problem } from "../../wording/problem";
import type { HashedRecord } from "../hashedRecord";
import { RecordError } from "../recordError";
import { recordProblem } from "../recordWords";
import { checkRecord, NONE_BESIDE, type RecordCheck } from "./checkRecord";
import { checkProblem } from "./checkWords";
import { readSittingRecord } from "./readSittingRecord";
import type { MotionsBeside } from "./replayedTries";
import { markedAgain, type SittingRecord } from "./sittingRecord";

/** How a sitting came out, as every screen and file says it. */
export type Outcome = "passed" | "failed" | "not shown yet" | "broken-off";

/** What may be shown of a sitting: all of it comes from its checked record, made again, and nothing from beside it. */
export interface SittingShown {
  /** By the marks made again from tries and answers; null where the record does not check, for then it shows nothing. */
  readonly outcome: Outcome | null;
  readonly title: string;
  /** As the record has it; null where it names nobody. */
  readonly person: string | null;
  /** ISO 8601. */
  readonly startedAt: string;
  readonly worked_ms: number;
  /** Short form, "7F3A-91C2". */
  readonly fingerprint: string;
  /** Whole, 64 hexadecimal digits: what sheets are compared by. */
  readonly sheetSha256: string;
  readonly reloads: number;
  readonly pauses: number;
  readonly tries: number;
  readonly lostTries: number;
  /** Whether the seed was given in an address: then it was practice. */
  readonly isPractice: boolean;
  readonly appVersion: string;
  readonly check: RecordCheck;
  /** What stands beside the record and says something else. */
  readonly differs: readonly Problem[];
}

/** What a file or a logbook says of a sitting beside its record; left out where it says nothing. */
export interface Beside {
  readonly outcome?: Outcome | undefined;
  readonly title?: string | undefined;
  /** ISO 8601. */
  readonly startedAt?: string | undefined;
  readonly person?: string | undefined;
}

const OUTCOMES: Readonly<Record<Verdict, Outcome>> = {
  pass: "passed",
  fail: "failed",
  "not shown": "not shown yet",
};

/** What marks and end of a sitting come to; one that failed before it was broken off is broken off. */
export const outcomeOf = (verdict: Verdict, ended: SittingRecord["ended"]): Outcome =>
  ended === "broken-off" ? "broken-off" : OUTCOMES[verdict];

function differences(record: SittingRecord, beside: Beside): Problem[] {
  const onRecord = outcomeOf(record.marking.verdict, record.ended);
  const findings: readonly (readonly [said: string | undefined, is: string, name: string])[] = [
    [beside.outcome, onRecord, "result"],
    [beside.title, record.sheet.title, "sheet"],
    [beside.startedAt, record.startedAt, "start"],
    // A record that names nobody says no other name.
    [record.person === undefined ? undefined : beside.person, record.person ?? "", "person"],
  ];
  return findings.flatMap(([said, is, name]) =>
    said === undefined || said === is ? [] : [checkProblem("file-differs", [], { said, name, is })],
  );
}

/**
 * What may be shown of a sitting.
 *
 * @param body - the record with its hash as it was saved, parsed JSON
 * @param motions - that were saved beside it
 * @param beside - what the logbook says of it beside it
 * @throws {DrillError} for what is no record; nothing else
 */
export function sittingShown(
  body: unknown,
  appVersion: string,
  motions: MotionsBeside = NONE_BESIDE,
  beside: Beside = {},
): SittingShown {
  return shownOf(readSittingRecord(body), appVersion, motions, beside);
}

/** What may be shown of a record that was read. @throws {DrillError}; nothing else */
function shownOf(
  { record, sha256 }: HashedRecord<SittingRecord>,
  appVersion: string,
  motions: MotionsBeside,
  beside: Beside,
): SittingShown {
  try {
    const found = checkRecord(record, sha256, appVersion, motions);
    const isNameless = beside.person !== undefined && record.person === undefined;
    const check = {
      ...found,
      unchecked: [...found.unchecked, ...(isNameless ? [checkProblem("nobody-named", [])] : [])],
    };
    const whole = sheetSha256(record.sheet);
    return {
      outcome: check.problems.length > 0 ? null : outcomeOf(markedAgain(record).verdict, record.ended),
      title: record.sheet.title,
      person: record.person ?? null,
      startedAt: record.startedAt,
      worked_ms: record.worked_ms,
      fingerprint: shortFingerprint(whole),
      sheetSha256: whole,
      reloads: record.interruptions,
      pauses: record.pauses,
      tries: record.tries.length,
      lostTries: record.tries.filter(({ isBrokenOff }) => isBrokenOff).length,
      isPractice: record.seedFrom === "address",
      appVersion: record.appVersion,
      check,
      differs: differences(record, beside),
    };
  } catch (error) {
    if (error instanceof DrillError) throw error;
    const why = error instanceof Error ? error.message : "it is damaged";
    throw new RecordError(recordProblem("cannot-be-checked", [], { why }));
  }
}
