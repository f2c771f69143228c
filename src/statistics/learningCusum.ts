import { mustLieIn } from "./statisticsError";

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
  mustLieIn("(0, 1)", "adequateFailureRate", p0, p0 > 0);
  mustLieIn(`(${p0}, 1)`, "inadequateFailureRate", p1, p1 > p0 && p1 < 1);
  mustLieIn("(0, ∞]", "limit", limit, limit > 0);
  return { success: Math.log((1 - p0) / (1 - p1)), failure: Math.log(p0 / p1) };
}

/** The score after one more step. */
export const nextScore = (score: number, step: number) => Math.max(0, score + step);

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
