import type { Fault } from "../../dialing/fault";
import type { Combination } from "../../lock/combination";
import type { Graduations, Milliseconds, Turn } from "../../lock/dial";
import type { ConformanceVerdict } from "../../statistics/conformance";
import type { Refusal } from "../../zeroing/approach";
import type { TryPlace } from "../sheet/planTries";
import type { Station } from "../sheet/sheet";

interface AnyTry extends TryPlace {
  /** From the first motion to the end, milliseconds. */
  readonly time_ms: Milliseconds;
  /** Lost to a reload or a crash: made, but not right. */
  readonly isBrokenOff: boolean;
}

/** What one try at dialing came to. */
export interface DialingTry extends AnyTry {
  readonly kind: "dialing";
  readonly combination: Combination;
  /** Whether it opened, the first time. */
  readonly opened: boolean;
  /** Of each number in dialing order; null where there was no stop to speak of. Graduations, positive ran past. */
  readonly stopErrors: readonly (Graduations | null)[];
  readonly faults: readonly Pick<Fault, "code" | "number" | "size">[];
}

/** One reading of a zero, as it was taken. */
export interface ReadingTaken {
  readonly turn: Turn;
  /** Of the zero mark from the index as drawn, graduations, left positive. */
  readonly deviation: Graduations;
  /** Why it did not count, or null. */
  readonly refusal: Refusal | null;
}

/** What one try at setting zero came to. */
export interface ZeroingTry extends AnyTry {
  readonly kind: "zeroing";
  /** Of each direction; null where its series was not closed. */
  readonly verdicts: Readonly<Record<Turn, ConformanceVerdict | null>>;
  /** Means of each direction, graduations; null where its series was not closed. */
  readonly means: Readonly<Record<Turn, Graduations | null>>;
  /** Readings refused. */
  readonly refused: number;
  /** Every reading in the order it was taken; left out in records of earlier versions. */
  readonly readings?: readonly ReadingTaken[] | undefined;
}

/** What one try of a sheet came to. */
export type TryResult = DialingTry | ZeroingTry;

const isInTime = ({ time_ms }: TryResult, { timeLimit_s = Infinity }: Station) => time_ms <= 1000 * timeLimit_s;

/** Faults at the numbers that the station has dialed. */
export function faultsCounted(one: Pick<DialingTry, "faults">, station: Station): DialingTry["faults"] {
  const upTo = station.kind === "dialing" ? station.upTo : undefined;
  // A dial that stops after some of the numbers is never drawn, and that is as it should be.
  return upTo === undefined
    ? one.faults
    : one.faults.filter(({ code, number }) => number <= upTo && code !== "not-drawn");
}

/**
 * Whether a try at dialing was right the first time: it opened, or its numbers were dialed without fault where the
 * station asks for some of them only; and within the time limit.
 */
export function isRight(one: DialingTry, station: Station): boolean {
  if (one.isBrokenOff || !isInTime(one, station)) return false;
  const isPartial = station.kind === "dialing" && station.upTo !== undefined;
  return isPartial ? faultsCounted(one, station).length === 0 : one.opened;
}

/** What a try at setting zero shows, both directions together and within the time limit. */
export function zeroShown(one: ZeroingTry, station: Station): ConformanceVerdict {
  const { left, right } = one.verdicts;
  if (one.isBrokenOff || !isInTime(one, station)) return "reject";
  if (left === "reject" || right === "reject") return "reject";
  return left === "accept" && right === "accept" ? "accept" : "not shown yet";
}
