import { conformanceVerdict } from "../statistics/conformance";
import { coarseMean, probabilityCoarseMeanConforms } from "../statistics/resolution";
import type { SideResult, ZeroLimits } from "./zeroResult";

/** More than this nobody takes. */
const PATIENCE = 50;

/**
 * How many more readings might show what has not been shown yet, if mean and spread stay as they are.
 *
 * A guess at what is worth doing, not a promise: mean and spread move with every reading.
 *
 * @returns 0 where the verdict stands, else an integer in [1, 50]; null where more than 50 would be needed
 * @throws {StatisticsError} as `sideResult`
 */
export function moreReadings(side: SideResult, { tolerance, risk, resolution = 0 }: ZeroLimits): number | null {
  for (let more = 0; more <= PATIENCE; more++) {
    const sample = { count: side.n + more, mean: side.mean, standardDeviation: side.sd };
    const known = coarseMean(sample, resolution);
    const probability = probabilityCoarseMeanConforms(known, { low: -tolerance, high: tolerance });
    if (conformanceVerdict(probability, risk) !== "not shown yet") return more;
  }
  return null;
}
