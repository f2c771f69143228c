import { mustHold } from "../statisticsError";

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
  mustHold(parts > 0, "empty-sample");
  const cells = measurements.flat();
  const isWhole =
    measurements.every((part) => part.length === appraisers) && cells.every((cell) => cell.length === trials);
  mustHold(isWhole, "unbalanced");
  const counts = { parts, appraisers, trials };
  for (const [name, count] of Object.entries(counts)) mustHold(count >= 2, "too-few-values", [name], { least: 2 });
  mustHold(cells.flat().every(Number.isFinite), "not-finite");
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
