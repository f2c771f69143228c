import type { ZeroingTry } from "../../drill/marking/tryResult";
import { readAgain } from "../../zeroing/readAgain";
import type { ZeroingState } from "../../zeroing/zeroingMachine";
import type { ZeroingRules } from "../../zeroing/zeroingRules";
import type { ZeroingRecord } from "../records";

/**
 * What a zeroing has come to, by where its chart is: set once both directions are read, not set where one never settled.
 * How good the zero is, is another question: its verdict.
 */
export function zeroingOutcome(state: ZeroingState): ZeroingRecord["outcome"] {
  if (state === "zeroSet") return "zero-set";
  return state === "notSet" ? "not-set" : "broken-off";
}

/** What a try of a sitting came to: its chart is run again over its readings. */
export function outcomeOfTry(
  { readings, verdicts }: Pick<ZeroingTry, "readings" | "verdicts">,
  rules: ZeroingRules,
): ZeroingRecord["outcome"] {
  const chart = readings && readAgain(readings, rules);
  if (chart) return zeroingOutcome(chart.value);
  // Tries of earlier versions have no readings: a direction that was closed has its verdict.
  return verdicts.left === null || verdicts.right === null ? "broken-off" : "zero-set";
}
