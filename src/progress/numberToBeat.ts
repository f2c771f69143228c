import type { Graduations } from "../lock/dial";
import type { AttemptRecord } from "../records/attemptRecord";
import { type TryEnd, triedRight } from "../records/triedRight";
import { likeKey, personalBests, worstStop } from "./personalBest";

/** One number of one's own to beat, under one exact setting and with one hand. */
export interface NumberToBeat {
  readonly kind: "worst-stop" | "streak";
  /** Graduations for the worst stop of an opening; openings in a row for a streak. */
  readonly value: number;
  /** The latest attempt under this setting. */
  readonly setting: AttemptRecord;
}

/** Below this the hand is as good as the eye can read a dial: then the streak is the number to beat. A training value. */
const BEST_BY_EYE: Graduations = 0.25;

/** The longest run of openings without a miss between. */
function longestStreak(attempts: readonly TryEnd[]): number {
  let [longest, now] = [0, 0];
  for (const one of attempts) {
    now = triedRight(one) ? now + 1 : 0;
    longest = Math.max(longest, now);
  }
  return longest;
}

/**
 * The number to beat at what was practiced last, with the hand used then: the worst stop of the truest opening, or the longest streak of openings
 * once that is as good as it gets.
 *
 * @param attempts - of one person, oldest first
 * @returns null before the first opening at that setting
 */
export function numberToBeat(attempts: readonly AttemptRecord[]): NumberToBeat | null {
  const ended = attempts.filter(({ isUnfinished }) => isUnfinished !== true);
  const setting = ended.at(-1);
  if (setting === undefined) return null;
  const like = ended.filter((one) => likeKey(one) === likeKey(setting));
  const streak = { kind: "streak", value: longestStreak(like), setting } as const;
  const truest = personalBests(like)[0]?.truest ?? null;
  // Stops in coarse steps are not judged: there the streak alone can be beaten.
  if (truest === null) return like.some(({ opened }) => opened) ? streak : null;
  const worst = truest.stops.length === 0 ? 0 : worstStop(truest);
  return worst > BEST_BY_EYE ? { kind: "worst-stop", value: worst, setting } : streak;
}
