import { type TryEnd, triedRight } from "../../records/triedRight";
import type { Interval } from "../../statistics/interval";
import { wilsonInterval } from "../../statistics/proportion";

/** How many attempts opened the lock. */
export interface FirstTimeOpenings {
  readonly opened: number;
  readonly trials: number;
  /** In [0, 1]. */
  readonly share: number;
  /** Wilson, 95 %. */
  readonly interval: Interval;
}

/** First-time openings among attempts; null where there are none, for no data is no number. */
export function firstTimeOpenings(attempts: readonly TryEnd[]): FirstTimeOpenings | null {
  const trials = attempts.length;
  if (trials === 0) return null;
  const opened = attempts.filter(triedRight).length;
  return { opened, trials, share: opened / trials, interval: wilsonInterval(opened, trials) };
}
