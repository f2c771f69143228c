import type { Chance } from "../statistics/chance";
import type { Interval } from "../statistics/interval";
import { type LearningCusumRule, learningCusum } from "../statistics/learningCusum";
import { wilsonInterval } from "../statistics/proportion";
import { MASTERY_RULE } from "./mastery";

/** How a mastery rule treats imagined learners of one failure rate. */
export interface CharacteristicRow {
  readonly failureRate: number;
  /** Share declared within the attempts granted, in [0, 1]; where the failure rate is not adequate: of false passes. */
  readonly declaredShare: number;
  /** Wilson, 95 %. */
  readonly interval: Interval;
  /** Attempts until the declaration, median of all learners; null where less than half are declared. */
  readonly medianAttempts: number | null;
}

/** What is imagined. */
export interface CharacteristicSetting {
  readonly failureRates: readonly number[];
  /** Attempts granted to each learner, a whole number above 0. */
  readonly attempts: number;
  /** Learners of each failure rate, a whole number above 0. */
  readonly learners: number;
}

const attemptsTaken = (rule: LearningCusumRule, failureRate: number, attempts: number, chance: Chance) =>
  learningCusum(
    Array.from({ length: attempts }, () => chance() >= failureRate),
    rule,
  ).declaredAt ?? Infinity;

/**
 * The operating characteristic of a mastery rule, by simulation: how often, and how soon, it declares learners whose
 * failure rate is known. Source: Biau & Porcher (2010), Stat. Med. 29:1900-1909.
 *
 * @param chance - called once an attempt
 */
export function masteryCharacteristic(
  { failureRates, attempts, learners }: CharacteristicSetting,
  chance: Chance,
  rule: LearningCusumRule = MASTERY_RULE,
): CharacteristicRow[] {
  return failureRates.map((failureRate) => {
    const taken = Array.from({ length: learners }, () => attemptsTaken(rule, failureRate, attempts, chance));
    const declared = taken.filter(Number.isFinite).length;
    const median = taken.sort((a, b) => a - b)[Math.ceil(learners / 2) - 1] ?? Infinity;
    return {
      failureRate,
      declaredShare: declared / learners,
      interval: wilsonInterval(declared, learners),
      medianAttempts: Number.isFinite(median) ? median : null,
    };
  });
}
