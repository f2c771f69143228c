import type { Assembly } from "../../../../fitting/assembly";
import type { FitCheck, FitObservation } from "../../../../fitting/fitCheck";
import type { LockToFit } from "../../../../fitting/fittedLock";

/** A check that a hand has begun with an instrument, and counts once it is read. */
export interface BegunCheck {
  /** What the instrument shows to whoever reads it right. */
  readonly seen: FitObservation;
  readonly take: () => void;
}

/** A lock that is checked. */
export interface CheckedLock {
  readonly assembly: Assembly;
  readonly lock: LockToFit;
  /** What the checks showed, latest first. */
  readonly log: readonly FitObservation[];
  check(check: FitCheck): void;
  /** Begins a check. @returns null where something stands in the way, which is then said */
  begin(check: FitCheck): BegunCheck | null;
}

/** Checks that count once an instrument is read. */
export type WorkedCheck = Extract<FitCheck, "depth" | "feelers">;
const WORKED: readonly FitCheck[] = ["depth", "feelers"] satisfies readonly WorkedCheck[];
export const isWorked = (check: FitCheck): check is WorkedCheck => WORKED.includes(check);
