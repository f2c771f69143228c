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

/** What an attempt adds to the score: the logarithm of its likelihood ratio, adequate to inadequate. */
export interface LearningSteps {
  /** > 0 */
  readonly success: number;
  /** < 0 */
  readonly failure: number;
}

/**
 * The two steps of a learning-curve CUSUM, which takes a learner for incompetent until the attempts say otherwise.
 *
 * Every attempt adds its step to a score that never falls below 0, so early failures are not held against the learner for
 * good. With attempts without end every learner reaches the limit, so the limit is chosen for a number of attempts.
 * Source: Biau, Williams, Schlup, Nizard & Porcher (2008), Br. J. Surg. 95:925-929; Biau & Porcher (2010), Stat. Med.
 * 29:1900-1909.
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
