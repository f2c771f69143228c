import type { Interval } from "../../statistics/interval";
import { signedText } from "./signedText";

const NOTHING = "–";

/** "83 %". @param share - in [0, 1] */
export const percentText = (share: number) => `${Math.round(100 * share)} %`;

/** "+0.42"; two decimals, for means of many stops. */
export const fineText = (value: number | null): string => (value === null ? NOTHING : signedText(value, 2));

/** "0.42", for what has no sign. */
export const unsignedText = (value: number | null, decimals = 2) =>
  value === null ? NOTHING : value.toFixed(decimals);

/** "+0.10 to +0.40" */
export const rangeText = (interval: Interval | null, text: (value: number) => string) =>
  interval === null ? NOTHING : `${text(interval.low)} to ${text(interval.high)}`;

/**
 * A domain that holds all values with some room round them.
 *
 * @param values - at least one
 * @param least - the domain is at least this wide
 */
export function roomyDomain(values: readonly number[], least: number): Interval {
  const low = Math.min(...values);
  const high = Math.max(...values);
  const lacking = Math.max(0, least - (high - low)) / 2;
  const room = 0.06 * Math.max(least, high - low);
  return { low: low - lacking - room, high: high + lacking + room };
}
