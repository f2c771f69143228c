import type { AttemptRecord } from "../records/attemptRecord";
import { settingsKey } from "../records/settingsKey";
import { triedRight } from "../records/triedRight";

const sameTask = (attempt: AttemptRecord) => `${settingsKey(attempt)} ${attempt.combination.join("-")}`;

/**
 * The misses that have not been made good: nothing with the same settings and combination was opened after them.
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
