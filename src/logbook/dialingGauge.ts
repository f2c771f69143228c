import type { GaugeMeasurements } from "../statistics/gaugeMeasurements";
import { type GaugeStudy, gaugeStudy } from "../statistics/gaugeStudy";
import { StatisticsError } from "../statistics/statisticsError";
import type { AttemptRecord } from "./attemptRecord";
import { nearStops } from "./nearStops";
import type { PersonRecord } from "./records";

/** Repeatability and reproducibility of dialing. */
export interface DialingGauge {
  /** People that took part, in the order of the study's appraisers. */
  readonly people: readonly PersonRecord[];
  /** Numbers in the combination: the study's parts. */
  readonly places: number;
  /** Stops of each person at each place: the latest ones. */
  readonly trials: number;
  readonly study: GaugeStudy;
}

/** Stops of each person, by place, oldest first. */
function stopsByPlace(attempts: readonly AttemptRecord[], places: number): number[][] {
  const near = nearStops(attempts);
  return Array.from({ length: places }, (_, k) => near.filter(({ step }) => step === k + 1).map(({ error }) => error));
}

const FEWEST = 2;

/**
 * Gauge study of dialing across people: the person is the appraiser, a place in the combination the part, a stop error
 * (graduations) the measurement.
 *
 * Repeatability is how one hand differs from itself, reproducibility how one person differs from another; the parts'
 * variation is that between first and later numbers, and no tolerance. Who has fewer than two stops at a place is left
 * out, and everyone counts with as many latest stops as the one with fewest. Source: AIAG, Measurement Systems
 * Analysis, 4th ed. (2010), by `statistics/gaugeStudy`.
 *
 * @param attempts - of one skill, oldest first
 * @returns the study, or a sentence that says what it lacks
 */
export function dialingGauge(
  people: readonly PersonRecord[],
  attempts: readonly AttemptRecord[],
): DialingGauge | { readonly lacking: string } {
  const places = attempts.reduce((most, { combination }) => Math.max(most, combination.length), 0);
  const all = people.map((person) => ({
    person,
    stops: stopsByPlace(
      attempts.filter(({ personId }) => personId === person.id),
      places,
    ),
  }));
  const taking = all.filter(({ stops }) => stops.every(({ length }) => length >= FEWEST));
  if (places < FEWEST || taking.length < FEWEST) {
    return { lacking: "It needs two people with two stops each at every number." };
  }
  const trials = Math.min(...taking.flatMap(({ stops }) => stops.map(({ length }) => length)));
  const measurements: GaugeMeasurements = Array.from({ length: places }, (_, k) =>
    taking.map(({ stops }) => (stops[k] ?? []).slice(-trials)),
  );
  try {
    return { people: taking.map(({ person }) => person), places, trials, study: gaugeStudy(measurements) };
  } catch (error) {
    if (error instanceof StatisticsError) return { lacking: error.message };
    throw error;
  }
}
