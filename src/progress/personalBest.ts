import { type Hand, handOf } from "../realdial/sources/handOf";
import { isCoarselyTurned } from "../realdial/sources/isCoarselyTurned";
import type { AttemptRecord } from "../records/attemptRecord";
import { plainCodes } from "../records/conditionCode";
import { settingsKey } from "../records/settingsKey";
import { FARTHEST_STOP } from "./stops/worstStop";

/** The best of one person under one exact setting. */
export interface PersonalBest {
  readonly profileId: string;
  readonly exercise: string;
  readonly help: AttemptRecord["help"];
  /** What it was turned with. */
  readonly hand: Hand;
  /** Codes, as records keep them. */
  readonly conditions: readonly string[];
  readonly attempts: number;
  /** Quickest opening, or null before the first with a time. */
  readonly quickest: AttemptRecord | null;
  /** Opening whose worst stop was best, or null before the first; none in coarse steps. */
  readonly truest: AttemptRecord | null;
}

/** The worst stop error of an attempt, graduations, >= 0; of one without stops as bad as a near stop can be. */
export const worstStop = ({ stops }: AttemptRecord) =>
  stops.reduce((worst, { error }) => Math.max(worst, Math.abs(error)), stops.length === 0 ? FARTHEST_STOP : 0);

/** The attempt with the least of something, the first of equals; null of none. */
export const least = (
  attempts: readonly AttemptRecord[],
  of: (attempt: AttemptRecord) => number,
): AttemptRecord | null =>
  attempts.reduce<AttemptRecord | null>((best, one) => (best === null || of(one) < of(best) ? one : best), null);

const NONE = { attempts: 0, quickest: null, truest: null } as const;

const settingOf = (attempt: AttemptRecord) => {
  const { profileId, exercise, help, conditions } = attempt;
  return { profileId, exercise, help, hand: handOf(attempt), conditions: plainCodes(conditions).toSorted() };
};

/**
 * A best after one more attempt under the same setting.
 *
 * @param best - before; undefined at the first attempt
 * @param attempt - later than all before: of equals the earlier one stands
 */
export function bestAfter(best: PersonalBest | undefined, attempt: AttemptRecord): PersonalBest {
  const before = best ?? { ...settingOf(attempt), ...NONE };
  const better = (one: AttemptRecord | null, counts: boolean, of: (attempt: AttemptRecord) => number) =>
    counts && attempt.opened ? least([...(one === null ? [] : [one]), attempt], of) : one;
  return {
    ...before,
    attempts: before.attempts + 1,
    quickest: better(before.quickest, attempt.duration_ms > 0, ({ duration_ms }) => duration_ms),
    truest: better(before.truest, !isCoarselyTurned(attempt), worstStop),
  };
}

/** Setting and hand of an attempt as one text: attempts with the same text may be compared. */
export const likeKey = (attempt: AttemptRecord): string => `${handOf(attempt)} ${settingsKey(attempt)}`;

/**
 * Personal bests, one for each exact setting and each hand: only like is compared with like.
 *
 * @param attempts - of one person, oldest first; of equals the earlier one stands
 * @returns in the order of first practice
 */
export function personalBests(attempts: readonly AttemptRecord[]): PersonalBest[] {
  const bests = new Map<string, PersonalBest>();
  for (const attempt of attempts) bests.set(likeKey(attempt), bestAfter(bests.get(likeKey(attempt)), attempt));
  return [...bests.values()];
}
