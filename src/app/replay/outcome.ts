import type { Attempt } from "../../dialing/attempt";
import { tellFaults, type WordedFault } from "../../dialing/faultWords";
import type { Graduations, Milliseconds } from "../../lock/dial";
import { worstStop } from "../../progress/stops/worstStop";
import { attemptOutcome } from "../../records/attemptOutcome";
import { type ResultRow, resultRows } from "./resultRows";

/** How an attempt ended: kept for the result panel. */
export interface Outcome {
  readonly opened: boolean;
  /** From the first motion to the opening or the refusal, milliseconds. */
  readonly time_ms: Milliseconds;
  /** As they stood then: what the hand does afterwards changes neither. */
  readonly faults: readonly WordedFault[];
  readonly rows: readonly ResultRow[];
  /** Size of the worst stop, graduations; null where none was near its number. */
  readonly worstStop: Graduations | null;
}

/** What an attempt comes to as it stands. */
export function outcomeOf(attempt: Attempt, time_ms: Milliseconds): Outcome {
  const { opened } = attempt;
  const worst = worstStop(attemptOutcome(attempt).stops);
  return { opened, time_ms, faults: tellFaults(attempt), rows: resultRows(attempt), worstStop: worst };
}
