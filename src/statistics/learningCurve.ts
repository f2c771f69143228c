import { compensatedSum } from "./compensatedSum";
import { exponentialFit } from "./exponentialFit";
import { fisherUpperTail } from "./fisherDistribution";
import { type Interval, USUAL_LEVEL, upperProbability } from "./interval";
import { sumOfSquaredDeviations } from "./sample";
import { mustHold } from "./statisticsError";
import { studentQuantile } from "./studentDistribution";

/** One attempt on a learning curve. */
export interface LearningAttempt {
  /** Which attempt it was, counted over all practice; gaps are allowed. */
  readonly number: number;
  /** What is measured: a time, an error, a score; any unit. */
  readonly value: number;
}

/** The exponential A + B e^(-alpha (n - first)), so that B is seen and not extrapolated. */
export interface ExponentialCurve {
  /** Where practice leads, A, unit of the values. */
  readonly asymptote: number;
  /** Distance from the asymptote at the first attempt, B, same unit; positive falls, negative rises. */
  readonly gap: number;
  /** Rate of learning, alpha, per attempt, > 0. */
  readonly rate: number;
  /** Number of the first attempt, counted over all practice. */
  readonly first: number;
}

/** A curve that the attempts support. */
export interface FittedLearningCurve extends ExponentialCurve {
  readonly kind: "fitted";
  /** Of the asymptote, by the curvature at the best fit; rough for few attempts. */
  readonly asymptoteInterval: Interval;
  /** About the curve, unit of the values. */
  readonly residualStandardDeviation: number;
}

/**
 * Why attempts support no curve: too few of them; no change beyond chance; all of the change between two neighbors;
 * or no leveling off yet, so that the asymptote is a guess.
 */
export type NoCurveReason = "too-few-attempts" | "no-trend" | "too-sudden" | "no-plateau";

/** Attempts that support no curve: an answer, not a failure. */
export interface UnsupportedLearningCurve {
  readonly kind: "unsupported";
  readonly reason: NoCurveReason;
}

/** Three parameters, and at least two values to judge them by. */
export const FEWEST_ATTEMPTS = 5;
const PARAMETERS = 3;

/**
 * Value of a learning curve.
 *
 * @param curve - fitted or imagined
 * @param attempt - number of the attempt, counted over all practice
 * @returns unit of the curve
 */
export function learningCurveValue({ asymptote, gap, rate, first }: ExponentialCurve, attempt: number): number {
  return asymptote + gap * Math.exp(-rate * (attempt - first));
}

const unsupported = (reason: NoCurveReason): UnsupportedLearningCurve => ({ kind: "unsupported", reason });

/** Residual of `values` after the best multiple of `along` is taken off. */
function withoutPart(values: readonly number[], along: readonly number[]): number[] {
  const product = (other: readonly number[]) => compensatedSum(other.map((value, i) => value * (along[i] ?? 0)));
  const share = product(values) / product(along);
  return values.map((value, i) => value - share * (along[i] ?? 0));
}

/**
 * Variance of the asymptote for a residual variance of 1: the first diagonal element of the inverse of J'J.
 *
 * By Frisch & Waugh (1933): one over the squared length of what the other two columns of J leave of the first, which is
 * a column of ones. The factor B of the third column is left out: it does not change the plane the two span.
 */
function asymptoteVariance({ rate, first }: ExponentialCurve, numbers: readonly number[]): number {
  const decay = numbers.map((number) => Math.exp(-rate * (number - first)));
  const slope = decay.map((value, i) => value * ((numbers[i] ?? first) - first));
  const ones = numbers.map(() => 1);
  const left = withoutPart(withoutPart(ones, decay), withoutPart(slope, decay));
  return 1 / compensatedSum(left.map((value) => value * value));
}

function residualSquares(curve: ExponentialCurve, attempts: readonly LearningAttempt[]): number {
  return compensatedSum(attempts.map(({ number, value }) => (value - learningCurveValue(curve, number)) ** 2));
}

/** Whether chance alone explains what the curve explains, at a level. */
function isChance(withoutCurve: number, withCurve: number, degreesOfFreedom: number, level: number): boolean {
  const explained = Math.max(0, withoutCurve - withCurve) / (PARAMETERS - 1);
  // Differences too small to be squared leave nothing to explain, and nothing unexplained.
  if (explained === 0) return true;
  const f = explained / (withCurve / degreesOfFreedom);
  return fisherUpperTail(f, PARAMETERS - 1, degreesOfFreedom) > 1 - level;
}

/** The curve with its interval, unless that reaches further than the whole change seen. */
function withAsymptoteInterval(
  curve: ExponentialCurve,
  numbers: readonly number[],
  residualStandardDeviation: number,
  upper: number,
): FittedLearningCurve | UnsupportedLearningCurve {
  const standardError = residualStandardDeviation * Math.sqrt(asymptoteVariance(curve, numbers));
  const reach = studentQuantile(upper, numbers.length - PARAMETERS) * standardError;
  const change = Math.abs(curve.asymptote + curve.gap - learningCurveValue(curve, Math.max(...numbers)));
  // Written so that a reach that is not a number supports nothing.
  if (!(reach <= change)) return unsupported("no-plateau");
  const asymptoteInterval = { low: curve.asymptote - reach, high: curve.asymptote + reach };
  return { kind: "fitted", ...curve, asymptoteInterval, residualStandardDeviation };
}

function isTooFew(attempts: readonly LearningAttempt[]): boolean {
  return attempts.length < FEWEST_ATTEMPTS || new Set(attempts.map(({ number }) => number)).size <= PARAMETERS;
}

/**
 * Learning curve of one person, exponential, by least squares.
 *
 * For one person the exponential fits better than the power law, which averaging over persons feigns: do not pool.
 * Source: Heathcote, Brown & Mewhort (2000), Psychon. Bull. Rev. 7:185-207. The asymptote's interval is the linearized
 * one of Bates & Watts (1988), Nonlinear Regression Analysis and Its Applications, chapter 2. A trend is asked for
 * first, by an F test against no change, a little too ready to see one because the rate is free; and an asymptote whose
 * interval reaches further than the whole change seen counts as not known.
 *
 * @param attempts - in any order, one unit
 * @param level - two-sided, of the asymptote's interval, and of the trend, in (0, 1)
 * @returns the curve, or the reason why there is none
 * @throws {StatisticsError} `bad-level`, or `not-finite`
 */
export function fitLearningCurve(
  attempts: readonly LearningAttempt[],
  level = USUAL_LEVEL,
): FittedLearningCurve | UnsupportedLearningCurve {
  const upper = upperProbability(level);
  const isAllNumbers = attempts.every(({ number, value }) => Number.isFinite(number) && Number.isFinite(value));
  mustHold(isAllNumbers, "not-finite");
  if (isTooFew(attempts)) return unsupported("too-few-attempts");
  const numbers = attempts.map(({ number }) => number);
  const values = attempts.map(({ value }) => value);
  const withoutCurve = sumOfSquaredDeviations(values);
  if (withoutCurve === 0) return unsupported("no-trend");

  const { edge, ...exponential } = exponentialFit(numbers, values);
  const curve = { ...exponential, first: Math.min(...numbers) };
  const degreesOfFreedom = values.length - PARAMETERS;
  const withCurve = residualSquares(curve, attempts);
  if (isChance(withoutCurve, withCurve, degreesOfFreedom, level)) return unsupported("no-trend");
  if (edge === "steepest") return unsupported("too-sudden");
  if (edge === "straightest") return unsupported("no-plateau");
  return withAsymptoteInterval(curve, numbers, Math.sqrt(withCurve / degreesOfFreedom), upper);
}
