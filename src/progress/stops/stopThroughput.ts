import { standardDeviation } from "../../statistics/sample";
import { type Throughput, throughput } from "../../statistics/throughput";
import { nearStops, type StoppedAttempt } from "./nearStops";

/**
 * Speed and accuracy of the stops at each place in the combination.
 *
 * Stops at one place are alike in ways and turns, as the effective width asks. Source: see `statistics/throughput`.
 *
 * @returns place 1 first; null where fewer than two stops have a time, or all fall on one spot
 */
export function stopThroughput(attempts: readonly StoppedAttempt[]): (Throughput | null)[] {
  const near = nearStops(attempts).filter(({ time_ms, amplitude }) => time_ms > 0 && amplitude > 0);
  const steps = near.reduce((most, { step }) => Math.max(most, step), 0);
  return Array.from({ length: steps }, (_, k) => {
    const stops = near
      .filter(({ step }) => step === k + 1)
      .map(({ amplitude, error, time_ms }) => ({ amplitude, deviation: error, time_ms }));
    // Asked of the spread itself: differences may be too small to leave any.
    const isSpread = stops.length > 1 && standardDeviation(stops.map(({ deviation }) => deviation)) > 0;
    return isSpread ? throughput(stops) : null;
  });
}
