import { StatisticsError } from "../statisticsError";

/** Measurements of a crossed study: `measurements[part][appraiser][trial]`, one unit, as many trials in every cell. */
export type GaugeMeasurements = readonly (readonly (readonly number[])[])[];

/** How large a crossed study is. */
export interface GaugeSize {
  readonly parts: number;
  readonly appraisers: number;
  readonly trials: number;
}

/**
 * Size of a crossed study that is whole.
 *
 * @param measurements - at least 2 parts, 2 appraisers and 2 trials
 * @returns integers >= 2
 * @throws {StatisticsError} `empty-sample`, `unbalanced` if a cell is missing or longer than another, `too-few-values`,
 *   or `not-finite`
 */
export function gaugeSize(measurements: GaugeMeasurements): GaugeSize {
  const parts = measurements.length;
  const appraisers = measurements[0]?.length ?? 0;
  const trials = measurements[0]?.[0]?.length ?? 0;
  if (parts === 0) throw new StatisticsError("empty-sample", "There are no measurements yet.");
  const cells = measurements.flat();
  const isWhole =
    measurements.every((part) => part.length === appraisers) && cells.every((cell) => cell.length === trials);
  if (!isWhole) {
    throw new StatisticsError("unbalanced", "Every appraiser must have measured every part equally often.");
  }
  if (Math.min(parts, appraisers, trials) < 2) {
    throw new StatisticsError("too-few-values", "A gauge study needs at least 2 parts, 2 appraisers and 2 trials.");
  }
  if (!cells.flat().every(Number.isFinite)) {
    throw new StatisticsError("not-finite", "A measurement is not a number.");
  }
  return { parts, appraisers, trials };
}

/**
 * All measurements by one appraiser.
 *
 * @param measurements - of a crossed study
 * @param appraiser - place, counted from 0
 * @returns same unit, in order of the parts
 */
export function measurementsBy(measurements: GaugeMeasurements, appraiser: number): number[] {
  return measurements.flatMap((part) => part[appraiser] ?? []);
}
