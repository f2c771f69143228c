import { mean, spread } from "../sample";
import { mustHold } from "../statisticsError";
import { type GaugeComponents, gaugeComponents } from "./gaugeComponents";
import { type GaugeMeasurements, gaugeSize, measurementsBy } from "./gaugeMeasurements";

/** A crossed gauge study by ranges. */
export interface GaugeRangeStudy {
  /** Mean range of the trials of one appraiser on one part. */
  readonly meanRange: number;
  /** Range of the appraisers' means. */
  readonly appraiserRange: number;
  /** Range of the parts' means. */
  readonly partRange: number;
  readonly components: GaugeComponents;
}

/** K1, 1 / d2 for 2 or 3 trials. Source: AIAG (2010), repeatability and reproducibility report. */
const TRIAL_FACTORS: readonly number[] = [0.8862, 0.5908];
/** 1 / d2* of one range of 2 to 10: K2 for appraisers (2 or 3), K3 for parts. Source: the same, which prints 0.7071 for the first. */
const ONE_RANGE_FACTORS: readonly number[] = [
  Math.SQRT1_2,
  0.5231,
  0.4467,
  0.403,
  0.3742,
  0.3534,
  0.3375,
  0.3249,
  0.3146,
];
const SMALLEST = 2;

function factor(table: readonly number[], size: number, what: string): number {
  const value = table[size - SMALLEST];
  const range = `[${SMALLEST}, ${table.length + SMALLEST - 1}]`;
  mustHold(value !== undefined, "bad-count", [what], { range, found: size });
  return value;
}

/**
 * Crossed gauge study by average and range, as worked by hand on the report form; the analysis of variance is better.
 *
 * Source: AIAG, Measurement Systems Analysis, 4th ed. (2010), chapter III, section B, average and range method.
 *
 * @param measurements - `[part][appraiser][trial]`, 2 to 10 parts, 2 or 3 appraisers, 2 or 3 trials, one unit
 * @returns ranges and components in the unit of the measurements; the interaction is not told apart
 * @throws {StatisticsError} `bad-count` for a size the method has no factor for; else as `gaugeStudy`
 */
export function gaugeRangeStudy(measurements: GaugeMeasurements): GaugeRangeStudy {
  const { parts, appraisers, trials } = gaugeSize(measurements);
  const trialFactor = factor(TRIAL_FACTORS, trials, "trials");
  const appraiserFactor = factor(ONE_RANGE_FACTORS.slice(0, 2), appraisers, "appraisers");
  const partFactor = factor(ONE_RANGE_FACTORS, parts, "parts");

  const meanRange = mean(measurements.flat().map(spread));
  const appraiserMeans = Array.from({ length: appraisers }, (_, j) => mean(measurementsBy(measurements, j)));
  const appraiserRange = spread(appraiserMeans);
  const partRange = spread(measurements.map((part) => mean(part.flat())));

  const equipment = meanRange * trialFactor;
  const appraiserVariance = (appraiserRange * appraiserFactor) ** 2 - equipment ** 2 / (parts * trials);
  const appraiser = Math.sqrt(Math.max(0, appraiserVariance));
  const components = gaugeComponents({ equipment, appraiser, interaction: 0, part: partRange * partFactor });
  return { meanRange, appraiserRange, partRange, components };
}
