import { mean, standardDeviation } from "./sample";
import { mustHold, mustLieIn } from "./statisticsError";

/** One stop of a series of like ones. */
export interface Stop {
  /** Way actually traveled to the stop, any unit, > 0. */
  readonly amplitude: number;
  /** Where it came to rest relative to its number, same unit, signed along the motion. */
  readonly deviation: number;
  /** From the start of the motion to the rest, > 0. */
  readonly time_ms: number;
}

/** Speed and accuracy of a series of stops in one number. */
export interface Throughput {
  /** Mean way traveled, unit of the stops. */
  readonly effectiveAmplitude: number;
  /** Width that the stops really used, unit of the stops. */
  readonly effectiveWidth: number;
  /** Effective index of difficulty. */
  readonly effectiveDifficulty_bits: number;
  readonly meanTime_ms: number;
  readonly throughput_bitsPerSecond: number;
}

/** Standard deviations in the effective width as ISO 9241-411 prints it: 96 % of normal stops fall inside. */
export const STANDARD_WIDTH_FACTOR = 4.133;

/**
 * Throughput of a series of stops.
 *
 * Means first, then one index: the mean of means, not the mean of single throughputs. Source: ISO/TS 9241-411:2012,
 * annex B; Soukoreff & MacKenzie (2004), Int. J. Hum.-Comput. Stud. 61:751-789.
 *
 * @param stops - at least two, in one unit, alike in number and way
 * @param widthFactor - standard deviations in the effective width, > 0
 * @returns bits and bits per second, both > 0
 * @throws {StatisticsError} `empty-sample`, `too-few-values`, `not-finite`, `no-spread` if all stops fall on one spot,
 *   or `bad-parameter` for a time, way or factor not above 0
 */
export function throughput(stops: readonly Stop[], widthFactor = STANDARD_WIDTH_FACTOR): Throughput {
  const effectiveWidth = widthFactor * standardDeviation(stops.map((stop) => stop.deviation));
  const effectiveAmplitude = mean(stops.map((stop) => stop.amplitude));
  const meanTime_ms = mean(stops.map((stop) => stop.time_ms));
  for (const [name, value] of Object.entries({ widthFactor, effectiveAmplitude, meanTime_ms }))
    mustLieIn("(0, ∞]", name, value, value > 0);
  mustHold(effectiveWidth !== 0, "no-spread");
  const effectiveDifficulty_bits = Math.log2(effectiveAmplitude / effectiveWidth + 1);
  const throughput_bitsPerSecond = effectiveDifficulty_bits / (meanTime_ms / 1000);
  return { effectiveAmplitude, effectiveWidth, effectiveDifficulty_bits, meanTime_ms, throughput_bitsPerSecond };
}
