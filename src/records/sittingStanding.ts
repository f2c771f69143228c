import type { SittingRecord } from "./records";

/** How a sitting stands, as lists tell it. */
export type SittingStanding = "running" | "broken-off" | NonNullable<SittingRecord["verdict"]>;

/**
 * How a sitting stands by what is stored beside its record: a copy, and quick. What is shown comes from the record, by
 * `checkedSitting`.
 */
export function standingOf({ state, verdict = "not shown yet" }: SittingRecord): SittingStanding {
  return state === "finished" ? verdict : state;
}
