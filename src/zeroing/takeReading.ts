import type { Milliseconds, Turn } from "../lock/dial";
import type { Chance } from "../statistics/chance";
import { type Approach, judgeReading } from "./approach";
import type { ZeroingEvent } from "./zeroingMachine";
import type { ZeroingRules } from "./zeroingRules";
import type { ZeroLock } from "./zeroLock";

/** A reading as the chart takes it in: accepted or refused. */
export type ReadingFact = Extract<ZeroingEvent, { readonly type: `reading.${string}` }>;

/** A lock under a hand. */
export interface WatchedLock {
  readonly lock: ZeroLock;
  /** What has watched the dial so far. */
  readonly approach: Approach;
  /** Source of the encoder's noise; asked for accepted readings only. */
  readonly chance: Chance;
}

/**
 * Takes a reading: judges the stop, reads the cam where it counts, and marks the stop as read.
 *
 * @param asked - direction whose series is open
 */
export function takeReading(
  { lock, approach, chance }: WatchedLock,
  asked: Turn,
  rules: ZeroingRules,
  now_ms: Milliseconds,
): ReadingFact {
  const deviation = lock.seenDeviation;
  const reason = judgeReading(asked, approach.facts(now_ms), deviation, rules);
  approach.readingTaken();
  return reason === null
    ? { type: "reading.accepted", reading: { deviation, cam: lock.readCam(chance) } }
    : { type: "reading.refused", reason, deviation };
}
