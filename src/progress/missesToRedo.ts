import type { AttemptRecord } from "../records/attemptRecord";
import { triedRight } from "../records/triedRight";
import { likeKey } from "./personalBest";

const sameTask = (attempt: AttemptRecord) => `${likeKey(attempt)} ${attempt.combination.join("-")}`;

/**
 * The misses that have not been made good: nothing with the same settings, hand and combination was opened
 * after them.
 *
 * @param attempts - of one person, oldest first
 * @returns the latest miss of each, latest first
 */
export function missesToRedo(attempts: readonly AttemptRecord[]): AttemptRecord[] {
  const latest = new Map<string, AttemptRecord>();
  for (const attempt of attempts) {
    latest.delete(sameTask(attempt));
    latest.set(sameTask(attempt), attempt);
  }
  return [...latest.values()].filter((one) => !triedRight(one)).reverse();
}
