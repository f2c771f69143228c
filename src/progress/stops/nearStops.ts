import { isCoarselyTurned } from "../../realdial/sources/isCoarselyTurned";
import type { AttemptRecord, StopRecord } from "../../records/attemptRecord";
import { FARTHEST_STOP } from "./worstStop";

/** What of an attempt its stops are judged by. */
export type StoppedAttempt = Pick<AttemptRecord, "stops" | "sources">;

/** The stops of an attempt that count in figures of stops: none where a coarse source turned the dial. */
export const judgedStopsOf = (attempt: StoppedAttempt): readonly StopRecord[] =>
  isCoarselyTurned(attempt) ? [] : attempt.stops;

/** The stops of attempts whose error tells of the hand's aim; lost counts and wrong numbers are left to the faults. */
export function nearStops(attempts: readonly StoppedAttempt[]): StopRecord[] {
  return attempts.flatMap((attempt) => judgedStopsOf(attempt).filter(({ error }) => Math.abs(error) <= FARTHEST_STOP));
}
