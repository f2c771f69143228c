import type { Attempt } from "../dialing/attempt";
import { faultsAtEnd, faultsSoFar } from "../dialing/fault";
import { runLength, stopError } from "../dialing/runs";
import type { Milliseconds } from "../lock/dial";
import type { AttemptRecord, StopRecord } from "./attemptRecord";

/** Faults that a record takes; a trembling hand turns back more often than anyone wants to read. */
const MOST_FAULTS = 200;

/** What came of an attempt: the part of its record that the engine knows. */
export type AttemptOutcome = Pick<AttemptRecord, "opened" | "faults" | "stops" | "isUnfinished">;

function stopsOf({ reader, profile, combination }: Attempt): StopRecord[] {
  return reader.legs.flatMap((leg, i) => {
    const number = combination[leg.step];
    if (number === undefined) return [];
    // The next turn begins where this one's rest ends.
    const end: Milliseconds | undefined = leg.endedAt ?? reader.legs[i + 1]?.startedAt;
    const time_ms = leg.startedAt === undefined || end === undefined ? 0 : Math.max(0, end - leg.startedAt);
    const error = stopError(leg.turn, leg.to, number, profile.graduations);
    return [{ step: leg.step + 1, turn: leg.turn, number, error, amplitude: runLength(leg), time_ms }];
  });
}

/**
 * What an attempt that has ended came to, for its record.
 *
 * A time of 0 stands where the motion has no times; such a stop counts in no throughput.
 */
export function attemptOutcome(attempt: Attempt): AttemptOutcome {
  return { opened: attempt.opened, faults: faultsAtEnd(attempt).slice(0, MOST_FAULTS), stops: stopsOf(attempt) };
}

/** What an attempt has come to that is under way, or that nobody will finish. */
export function unfinishedOutcome(attempt: Attempt): AttemptOutcome {
  return {
    opened: false,
    isUnfinished: true,
    faults: faultsSoFar(attempt).slice(0, MOST_FAULTS),
    stops: stopsOf(attempt).slice(0, -1),
  };
}
