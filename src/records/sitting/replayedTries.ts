import { faultsAtEnd } from "../../dialing/fault";
import type { Motion } from "../../dialing/motion";
import { stopError } from "../../dialing/runs";
import { spunOffStart } from "../../dialing/spunOffStart";
import { canonicalJson } from "../../drill/canonicalJson";
import type { DialingTry } from "../../drill/marking/tryResult";
import { stationProfile } from "../../drill/sheet/stationProfile";
import { tryChance } from "../../drill/sitting/tryChance";
import type { Graduations, Milliseconds } from "../../lock/dial";
import { LockError } from "../../lock/lockError";
import { mayKeepMotion } from "../../realdial/sources/sourceDescription";
import { replay } from "../../trace/replay";
import type { Problem } from "../../wording/problem";
import { motionOfText } from "../motion/traceCodec";
import { checkProblem, tryProblem } from "./checkWords";
import type { SittingRecord } from "./sittingRecord";

/** The motion of a try as it was saved beside the record, for records that bring none; undefined where there is none. */
export type MotionsBeside = (index: number) => Motion | undefined;

/** What replaying a record's tries came to. */
export interface ReplayedTries {
  /** What no version can be the cause of. */
  readonly problems: readonly Problem[];
  /** What another version's mechanics may be the cause of. */
  readonly byVersion: readonly Problem[];
  /** Places, from 1, of tries at dialing that no motion is there for. */
  readonly missing: readonly number[];
  /** Places, from 1, of tries that were replayed. */
  readonly replayed: readonly number[];
}

/** Sums of moves carry rounding; stop errors are hundredths of a graduation at the finest. */
const SAME: Graduations = 1e-6;
/** Recordings keep whole milliseconds. */
const SAME_TIME: Milliseconds = 1;

/** What a motion comes to on its lock. */
function outcomeOf(one: DialingTry, record: SittingRecord, motion: Motion) {
  const profile = stationProfile(record.sheet.stations[one.station] ?? { profile: "" });
  const attempt = replay({ profile, combination: one.combination, ...motion });
  const { reader, combination, opened } = attempt;
  const stopErrors = combination.map((number, k) => {
    const leg = reader.legs.findLast(({ step }) => step === k);
    return leg === undefined ? null : stopError(leg.turn, leg.to, number, profile.graduations);
  });
  return { opened, stopErrors, faults: faultsAtEnd(attempt), time_ms: motion.times_ms?.at(-1) };
}

const isNear = (one: number | null | undefined, other: number | null | undefined, within: number) =>
  typeof one === "number" && typeof other === "number" ? Math.abs(one - other) <= within : one === other;

function hasSameFaults(one: DialingTry["faults"], other: DialingTry["faults"]): boolean {
  return (
    one.length === other.length &&
    one.every((fault, k) => {
      const { code, number, size } = other[k] ?? {};
      return fault.code === code && fault.number === number && isNear(fault.size, size, SAME);
    })
  );
}

/** How the motion of a try begins by the seed of its sitting. */
function isStartDrawn(one: DialingTry, index: number, { sheet, seed }: SittingRecord, { start }: Motion): boolean {
  const profile = stationProfile(sheet.stations[one.station] ?? { profile: "" });
  const drawn = spunOffStart(profile, one.combination, tryChance(seed, index, one.begunAgain));
  return canonicalJson(start ?? null) === canonicalJson(drawn);
}

interface Findings {
  readonly problems: Problem[];
  readonly byVersion: Problem[];
}

/** Compares a try with what its motion comes to. */
function compare(one: DialingTry, index: number, record: SittingRecord, motion: Motion): Findings {
  const again = outcomeOf(one, record, motion);
  const isSameStops = one.stopErrors.every((error, k) => isNear(error, again.stopErrors[k], SAME));
  const findings: readonly (readonly [isFine: boolean, kind: keyof Findings, misfit: Problem])[] = [
    [!one.opened || again.opened, "problems", checkProblem("recording-does-not-open", [])],
    // A later version may open where an earlier one did not: that does not speak for the candidate.
    [one.opened || !again.opened, "byVersion", checkProblem("recording-opens", [])],
    [
      isNear(one.time_ms, again.time_ms, SAME_TIME),
      "problems",
      checkProblem("recording-lasts", [], { time: one.time_ms, lasts: again.time_ms ?? "an unknown number of" }),
    ],
    [isSameStops, "byVersion", checkProblem("other-stop-errors", [])],
    [hasSameFaults(one.faults, again.faults), "byVersion", checkProblem("other-faults", [])],
    [isStartDrawn(one, index, record, motion), "byVersion", checkProblem("other-start", [])],
  ];
  const failed = (kind: keyof Findings) =>
    findings.flatMap(([isFine, of, misfit]) => (!isFine && of === kind ? [tryProblem(index + 1, misfit)] : []));
  return { problems: failed("problems"), byVersion: failed("byVersion") };
}

/** The motion of one try: from the record, else as it was saved beside it. @throws {Error} where it cannot be read */
function motionOf(index: number, { motions }: SittingRecord, beside: MotionsBeside): Motion | undefined {
  const packed = motions?.[index] ?? null;
  return packed === null ? beside(index) : motionOfText(packed);
}

function compared(one: DialingTry, index: number, record: SittingRecord, motion: Motion): Findings {
  try {
    return compare(one, index, record, motion);
  } catch (error) {
    if (!(error instanceof LockError)) throw error;
    const misfit = checkProblem("recording-impossible", [], { why: error.message });
    return { problems: [tryProblem(index + 1, misfit)], byVersion: [] };
  }
}

/** Tries that have one and the same recording, to the last move and millisecond. */
function twins(motions: ReadonlyMap<number, Motion>): Problem[] {
  const firsts = new Map<string, number>();
  return [...motions].flatMap(([index, { positions, times_ms = [] }]) => {
    const text = `${positions.join()} ${times_ms.join()}`;
    const first = firsts.get(text);
    if (first === undefined) firsts.set(text, index);
    return first === undefined || positions.length < FEW
      ? []
      : [checkProblem("same-recording", [], { one: first + 1, other: index + 1 })];
  });
}

/** Two hands that did almost nothing may have done the same. */
const FEW = 8;

/** Motions of the tries at dialing, as far as there are any that can be read. */
function motionsOf(record: SittingRecord, beside: MotionsBeside) {
  const motions = new Map<number, Motion>();
  const missing: number[] = [];
  const problems: Problem[] = [];
  record.tries.forEach((one, index) => {
    if (one.kind !== "dialing" || one.isBrokenOff) return;
    try {
      const motion = motionOf(index, record, beside);
      if (motion !== undefined && !mayKeepMotion(one))
        problems.push(tryProblem(index + 1, checkProblem("motion-though-none", [])));
      if (motion === undefined) missing.push(index + 1);
      else motions.set(index, motion);
    } catch {
      problems.push(tryProblem(index + 1, checkProblem("recording-unreadable", [])));
    }
  });
  return { motions, missing, problems };
}

/** Replays every try at dialing of a record on its own lock and compares what is on record. */
export function replayedTries(record: SittingRecord, beside: MotionsBeside): ReplayedTries {
  const { motions, missing, problems } = motionsOf(record, beside);
  const findings = [...motions].flatMap(([index, motion]) => {
    const one = record.tries[index];
    return one?.kind === "dialing" ? [compared(one, index, record, motion)] : [];
  });
  return {
    problems: [...problems, ...findings.flatMap((one) => one.problems), ...twins(motions)],
    byVersion: findings.flatMap((one) => one.byVersion),
    missing,
    replayed: [...motions.keys()].map((index) => index + 1),
  };
}
