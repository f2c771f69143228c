import type { Interval } from "./interval";
import { wilsonInterval } from "./proportion";
import { StatisticsError } from "./statisticsError";

/** When a learner is declared competent. */
export interface LearningCusumRule {
  /** Failure rate of a competent person, p0, in (0, 1). */
  readonly adequateFailureRate: number;
  /** Failure rate that is not to be passed, p1, in (p0, 1). */
  readonly inadequateFailureRate: number;
  /** Score that declares competence, h, > 0. */
  readonly limit: number;
}

/** The running score of a learner. */
export interface LearningCusum {
  /** After each attempt, dimensionless, >= 0. */
  readonly scores: readonly number[];
  /** Attempt that brought the score to the limit, counted from 1; undefined while none has. */
  readonly declaredAt: number | undefined;
}

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

/** What an attempt adds to the score: the logarithm of its likelihood ratio, adequate to inadequate. */
export interface LearningSteps {
  /** > 0 */
  readonly success: number;
  /** < 0 */
  readonly failure: number;
}

/**
 * The two steps of a rule.
 *
 * @throws {StatisticsError} `bad-parameter` for a rule out of range
 */
export function learningSteps({
  adequateFailureRate: p0,
  inadequateFailureRate: p1,
  limit,
}: LearningCusumRule): LearningSteps {
  if (!(p0 > 0 && p1 > p0 && p1 < 1)) {
    throw new StatisticsError(
      "bad-parameter",
      `Failure rates must rise from adequate to inadequate, not ${p0} to ${p1}.`,
    );
  }
  if (!(limit > 0))
    throw new StatisticsError("bad-parameter", `The limit of the score is above 0, and ${limit} is not.`);
  return { success: Math.log((1 - p0) / (1 - p1)), failure: Math.log(p0 / p1) };
}

const nextScore = (score: number, step: number) => Math.max(0, score + step);

/**
 * Learning-curve CUSUM: takes a learner for incompetent until the attempts say otherwise.
 *
 * Every attempt adds the logarithm of its likelihood ratio, adequate to inadequate; the score never falls below 0, so
 * early failures are not held against the learner for good. A declaration is not taken back, and it is final: with
 * attempts without end every learner is declared, so the limit is chosen for a number of attempts (see
 * `simulateOperatingCharacteristic`). Source: Biau, Williams, Schlup, Nizard & Porcher (2008), Br. J. Surg. 95:925-929;
 * Biau & Porcher (2010), Stat. Med. 29:1900-1909.
 *
 * @param successes - outcome of each attempt in order, true for a success; may be empty
 * @param rule - failure rates and limit
 * @returns the score after each attempt, the declaring one and those after it included
 * @throws {StatisticsError} `bad-parameter` for a rule out of range
 */
export function learningCusum(successes: readonly boolean[], rule: LearningCusumRule): LearningCusum {
  const { success, failure } = learningSteps(rule);
  let score = 0;
  const scores = successes.map((wasSuccess) => {
    score = nextScore(score, wasSuccess ? success : failure);
    return score;
  });
  const declaring = scores.findIndex((value) => value >= rule.limit);
  return { scores, declaredAt: declaring < 0 ? undefined : declaring + 1 };
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
  if (!(failureRate >= 0 && failureRate <= 1)) {
    throw new StatisticsError("bad-parameter", `A failure rate lies between 0 and 1, and ${failureRate} does not.`);
  }
  if (!(Number.isInteger(attempts) && Number.isInteger(learners) && attempts >= 1 && learners >= 1)) {
    throw new StatisticsError("bad-count", `${learners} learners of ${attempts} attempts cannot be imagined.`);
  }
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
