import type { Station } from "../sheet/sheet";
import type { Criterion, MarkingScheme } from "./markingScheme";
import type { DialingTry, TryResult, ZeroingTry } from "./tryResult";

/** What a sitting, or one criterion of it, comes to. */
export type Verdict = "pass" | "fail" | "not shown";

/** All that one criterion is marked from. */
export interface Evidence {
  readonly criterion: Criterion;
  readonly scheme: MarkingScheme;
  readonly station: Station | undefined;
  /** Every try at the station. */
  readonly made: readonly TryResult[];
  readonly dialed: readonly DialingTry[];
  readonly zeroed: readonly ZeroingTry[];
  readonly answers: readonly boolean[];
  /** Tries or answers that are still wanting and may yet come. */
  readonly open: number;
}

/** One criterion, judged. */
export interface Judged {
  readonly verdict: Verdict;
  /** In the unit of the criterion; null where there is nothing to measure. */
  readonly value: number | null;
  /** Value against limit, in words. */
  readonly says: string;
  /** How sure that is, in words; empty where it is plainly counted. */
  readonly sureness: string;
  /** Name of the method and its level, for those who want it; left out where it is plainly counted. */
  readonly method?: string;
}

/** A count that must reach a limit; what is open may still reach it. */
export const reaches = (count: number, open: number, limit: number): Verdict => {
  if (count >= limit) return "pass";
  return count + open >= limit ? "not shown" : "fail";
};

/** A count that must not exceed a limit; what is open may still exceed it. */
export const staysWithin = (count: number, open: number, limit: number): Verdict => {
  if (count > limit) return "fail";
  return open > 0 && count + open > limit ? "not shown" : "pass";
};

/** How many tries or answers are still wanting, in words. */
export const openText = (open: number) => (open > 0 ? `, ${open} not made` : "");

/** How many tries were lost, in words. */
export const lostText = (lost: number) => (lost > 0 ? `, ${lost} lost to a reload` : "");
