import type { Interval } from "./interval";
import { type LearningCusumRule, type LearningSteps, learningSteps, nextScore } from "./learningCusum";
import { wilsonInterval } from "./proportion";
import { mustLieIn } from "./statisticsError";

/** A learner to be imagined many times over. */
export interface ImaginedLearner {
  /** True failure rate, the same at every attempt, in [0, 1]. */
  readonly failureRate: number;
  /** Attempts granted, integer >= 1. */
  readonly attempts: number;
  /** How many such learners, integer >= 1. */
  readonly learners: number;
}

/** How often, and how soon, a rule declares learners of a known failure rate. */
export interface OperatingCharacteristic {
  /** Share of learners declared, in [0, 1]. */
  readonly declaredShare: number;
  /** What the number of learners leaves open of that share: Wilson interval at 95 %. */
  readonly declaredInterval: Interval;
  /** Mean attempts until the declaration, of those declared; undefined if none was. */
  readonly meanAttempts: number | undefined;
}

function attemptsUntilDeclared(
  { failureRate, attempts }: ImaginedLearner,
  { success, failure }: LearningSteps,
  limit: number,
  random: () => number,
): number | undefined {
  let score = 0;
  for (let attempt = 1; attempt <= attempts; attempt += 1) {
    score = nextScore(score, random() < failureRate ? failure : success);
    if (score >= limit) return attempt;
  }
  return undefined;
}

/**
 * Tries a rule on imagined learners of one failure rate.
 *
 * At the inadequate rate the share declared is the risk of a false declaration, at the adequate rate the chance of a
 * deserved one. Source: Biau & Porcher (2010), Stat. Med. 29:1900-1909.
 *
 * @param rule - failure rates and limit
 * @param learner - what is imagined, and how often
 * @param random - seeded generator, uniform in [0, 1); called once an attempt
 * @throws {StatisticsError} `bad-parameter` for a rule or failure rate out of range, `bad-count` for counts that are not
 *   whole and above 0
 */
export function simulateOperatingCharacteristic(
  rule: LearningCusumRule,
  learner: ImaginedLearner,
  random: () => number,
): OperatingCharacteristic {
  const step = learningSteps(rule);
  const { failureRate, attempts, learners } = learner;
  mustLieIn("[0, 1]", "failureRate", failureRate, failureRate >= 0 && failureRate <= 1);
  for (const [name, count] of Object.entries({ attempts, learners }))
    mustLieIn("[1, ∞)", name, count, Number.isInteger(count) && count >= 1, "bad-count");
  let declared = 0;
  let attemptsTaken = 0;
  for (let i = 0; i < learners; i += 1) {
    const taken = attemptsUntilDeclared(learner, step, rule.limit, random);
    if (taken === undefined) continue;
    declared += 1;
    attemptsTaken += taken;
  }
  return {
    declaredShare: declared / learners,
    declaredInterval: wilsonInterval(declared, learners),
    meanAttempts: declared === 0 ? undefined : attemptsTaken / declared,
  };
}
