import { LAPSE_SCORE, MASTERY_RULE, type MasteryRule, READY_SCORE } from "../records/masteryRule";
import type { LearningSteps } from "../statistics/learningCusum";
import { nextLapse, nextReady, ROUNDING, stepsOf } from "./readiness";

/** How a rule treats people of one true rate of misses. */
export interface CharacteristicRow {
  /** In [0, 1]. */
  readonly failureRate: number;
  /** Share called ready within the attempts granted, in [0, 1]; where the rate is not adequate: of false calls. */
  readonly readyShare: number;
  /** Attempts until half of them are called ready; null where less than half are, within the attempts granted. */
  readonly medianAttempts: number | null;
  /** Share that lose readiness within as many attempts after it was shown, in [0, 1]. */
  readonly lapseShare: number;
}

interface Chain {
  readonly next: (score: number, opened: boolean) => number;
  /** Score that ends the walk. */
  readonly limit: number;
  /** Attempt before which it does not end. */
  readonly earliest: number;
}

/** Scores less likely than this are dropped: over a thousand attempts they come to less than a millionth. */
const NEGLIGIBLE = 1e-12;

/** Scores that differ by rounding alone are one. */
const keyOf = (score: number) => Math.round(score * 1e9) / 1e9;

/** Where each score may lead after one more attempt, with its share. */
function* stepsFrom(scores: ReadonlyMap<number, number>, failureRate: number, next: Chain["next"]) {
  for (const [score, share] of scores) {
    yield { score: keyOf(next(score, true)), share: share * (1 - failureRate) };
    yield { score: keyOf(next(score, false)), share: share * failureRate };
  }
}

/**
 * Share of walks that have ended, after each attempt: the distribution of the score, carried on attempt by attempt.
 *
 * @param failureRate - the same at every attempt, in [0, 1]
 */
function endedShares({ next, limit, earliest }: Chain, failureRate: number, attempts: number): number[] {
  let scores = new Map([[0, 1]]);
  let ended = 0;
  return Array.from({ length: attempts }, (_, i) => {
    const after = new Map<number, number>();
    for (const { score, share } of stepsFrom(scores, failureRate, next)) {
      if (score >= limit - ROUNDING && i + 1 >= earliest) ended += share;
      else if (share >= NEGLIGIBLE) after.set(score, (after.get(score) ?? 0) + share);
    }
    scores = after;
    return Math.min(1, ended);
  });
}

const readyChain = (rule: MasteryRule, steps: LearningSteps): Chain => ({
  next: (score, opened) => nextReady(score, steps, opened),
  limit: READY_SCORE,
  earliest: rule.minimumAttempts,
});

/**
 * Share of people of one rate of misses who have been called ready, after each attempt: exact, but for shares below
 * 1e-12 that are dropped.
 *
 * @param failureRate - in [0, 1]
 * @param attempts - a whole number above 0
 */
export function readyShares(rule: MasteryRule, failureRate: number, attempts: number): readonly number[] {
  return endedShares(readyChain(rule, stepsOf(rule)), failureRate, attempts);
}

/** Share of people of one rate of misses who lose readiness by misses, after each attempt since it was shown. */
export function lapseShares(rule: MasteryRule, failureRate: number, attempts: number): readonly number[] {
  const steps = stepsOf(rule);
  const next = (score: number, opened: boolean) => nextLapse(score, steps, opened);
  return endedShares({ next, limit: LAPSE_SCORE, earliest: 1 }, failureRate, attempts);
}

/**
 * The operating characteristic of a rule: how often, and how soon, it calls people ready whose rate of misses is known,
 * and how often they lose it again. Source of the rule: Biau & Porcher (2010), Stat. Med. 29:1900-1909; the shares are
 * worked out by the Markov chain of its score (Brook & Evans 1972, Biometrika 59:539-549).
 *
 * @param attempts - granted to each, a whole number above 0
 */
export function masteryCharacteristic(
  failureRates: readonly number[],
  attempts: number,
  rule: MasteryRule = MASTERY_RULE,
): CharacteristicRow[] {
  return failureRates.map((failureRate) => {
    const shares = readyShares(rule, failureRate, attempts);
    const half = shares.findIndex((share) => share >= 0.5);
    return {
      failureRate,
      readyShare: shares.at(-1) ?? 0,
      medianAttempts: half < 0 ? null : half + 1,
      lapseShare: lapseShares(rule, failureRate, attempts).at(-1) ?? 0,
    };
  });
}

/** Attempts that are worked out at once; more are worked out when asked for. */
const AT_ONCE = 50;

const known = new Map<string, readonly number[]>();

/**
 * How often luck alone does it: the share of people who miss at the inadequate rate that are called ready within some
 * attempts. Worked out once for each rule.
 *
 * @returns in [0, 1]
 */
export function luckyShare(rule: MasteryRule, attempts: number): number {
  const key = JSON.stringify(rule);
  const before = known.get(key);
  const shares =
    before !== undefined && before.length >= attempts
      ? before
      : readyShares(rule, rule.inadequateFailureRate, Math.ceil(attempts / AT_ONCE) * AT_ONCE);
  known.set(key, shares);
  return shares[attempts - 1] ?? 0;
}
