import type { Graduations } from "../../lock/dial";
import { isCoarselyTurned } from "../../realdial/sources/sourceDescription";
import type { AttemptRecord, StopRecord } from "../../records/attemptRecord";

/** Farther off than this a stop is no bad stop but another number, or a lost count, graduations. A training value. */
export const FARTHEST_STOP = 5;

/** What of an attempt its stops are judged by. */
export type StoppedAttempt = Pick<AttemptRecord, "stops" | "sources">;

/** The stops of an attempt that count in figures of stops: none where a coarse source turned the dial. */
export const judgedStopsOf = (attempt: StoppedAttempt): readonly StopRecord[] =>
  isCoarselyTurned(attempt) ? [] : attempt.stops;

/** The stops of attempts whose error tells of the hand's aim; lost counts and wrong numbers are left to the faults. */
export function nearStops(attempts: readonly StoppedAttempt[]): StopRecord[] {
  return attempts.flatMap((attempt) => judgedStopsOf(attempt).filter(({ error }) => Math.abs(error) <= FARTHEST_STOP));
}

/** Size of the worst stop of an attempt, graduations; null where no stop was near its number. */
export function worstStop(stops: readonly Pick<StopRecord, "error">[]): Graduations | null {
  const sizes = stops.map(({ error }) => Math.abs(error)).filter((size) => size <= FARTHEST_STOP);
  return sizes.length === 0 ? null : Math.max(...sizes);
}
