import { nearStops, type StoppedAttempt } from "./nearStops";
import { type StopErrors, stopErrors } from "./stopTable";

/** One stretch of the dial. */
export interface HeatBin {
  /** Readings in [from, to), graduations. */
  readonly from: number;
  readonly to: number;
  readonly errors: StopErrors | null;
  /** Root mean square of the stop errors, graduations: how badly one stops here; null without a stop. */
  readonly badness: number | null;
}

/**
 * Stop errors by where on the dial the number lies.
 *
 * @param perTurn - graduations in one turn, of the one profile that the attempts are from
 * @param count - stretches of equal length, a whole number above 0
 * @returns the stretch from 0 first
 */
export function heatStrip(attempts: readonly StoppedAttempt[], perTurn: number, count: number): HeatBin[] {
  const near = nearStops(attempts);
  const placeOf = (number: number) => Math.min(count - 1, Math.floor((number * count) / perTurn));
  return Array.from({ length: count }, (_, i) => {
    const stops = near.filter(({ number }) => placeOf(number) === i);
    const squares = stops.reduce((sum, { error }) => sum + error * error, 0);
    return {
      from: (perTurn * i) / count,
      to: (perTurn * (i + 1)) / count,
      errors: stopErrors(stops),
      badness: stops.length === 0 ? null : Math.sqrt(squares / stops.length),
    };
  });
}
