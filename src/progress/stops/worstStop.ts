import type { Graduations } from "../../lock/dial";
import type { StopRecord } from "../../records/attemptRecord";

/** Farther off than this a stop is no bad stop but another number, or a lost count, graduations. A training value. */
export const FARTHEST_STOP = 5;

/** Size of the worst stop of an attempt, graduations; null where no stop was near its number. */
export function worstStop(stops: readonly Pick<StopRecord, "error">[]): Graduations | null {
  const sizes = stops.map(({ error }) => Math.abs(error)).filter((size) => size <= FARTHEST_STOP);
  return sizes.length === 0 ? null : Math.max(...sizes);
}
