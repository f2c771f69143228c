import type { Milliseconds } from "../../lock/dial";

/** Whether a try took no longer than its station allows; a station without a limit allows any time. */
export const inTime = (
  { time_ms }: { readonly time_ms: Milliseconds },
  { timeLimit_s = Infinity }: { readonly timeLimit_s?: number | undefined },
): boolean => time_ms <= 1000 * timeLimit_s;
