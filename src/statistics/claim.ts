import { clopperPearsonInterval, zeroFailureSampleSize } from "./proportion";

/** A chance of success that tries are to show, and how surely. */
export interface Claim {
  /** Least chance of success, in (0, 1). */
  readonly rate: number;
  /** Confidence, one-sided, in [0.5, 1). */
  readonly confidence: number;
}

/** Whether tries bear a claim out, rule it out, or leave it open. */
export type Shown = "shown" | "ruled out" | "not shown";

/** Bounds are found by iteration; one that should be equal to the rate may come out a hair below. */
const RESOLVED = 1e-9;

/**
 * What tries say about a claim, by one-sided Clopper-Pearson bounds at its confidence.
 *
 * With no failure this agrees with the success-run theorem: 22 of 22 show 90 % with 90 % confidence.
 *
 * @param successes - in [0, trials]
 * @param trials - >= 0
 */
export function judgeClaim(successes: number, trials: number, { rate, confidence }: Claim): Shown {
  if (trials === 0) return "not shown";
  // Either end of a central interval of level 2C - 1 is a one-sided bound at C.
  const { low, high } = clopperPearsonInterval(successes, trials, Math.max(2 * confidence - 1, RESOLVED));
  if (low >= rate - RESOLVED) return "shown";
  return high < rate - RESOLVED ? "ruled out" : "not shown";
}

const MOST_TRIALS = 100_000;

/**
 * How many tries a claim needs when some of them fail.
 *
 * @param failures - failures allowed, an integer >= 0
 * @returns the least number of tries; Infinity where more than 100,000 would be needed
 */
export function trialsToShow(claim: Claim, failures: number): number {
  const isShown = (trials: number) => judgeClaim(trials - failures, trials, claim) === "shown";
  let high = zeroFailureSampleSize(claim.confidence, claim.rate) + failures;
  if (failures === 0) return high;
  let low = high - 1;
  while (!isShown(high)) {
    if (high > MOST_TRIALS) return Infinity;
    low = high;
    high *= 2;
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (isShown(middle)) high = middle;
    else low = middle;
  }
  return high;
}

const percent = (share: number) => `${Number((100 * share).toFixed(2))} %`;

/** A claim in words: "90 % with 90 % confidence". */
export function claimText({ rate, confidence }: Claim): string {
  return `${percent(rate)} with ${percent(confidence)} confidence`;
}

/**
 * What would have to be tried to show a claim, in sentences.
 *
 * Source: success-run theorem, n = ln(1 - C) / ln R rounded up; with failures by Clopper-Pearson.
 */
export function claimAdvice(claim: Claim): string[] {
  const [none = 0, one = 0, two = 0] = [0, 1, 2].map((failures) => trialsToShow(claim, failures));
  return [
    `${none} of ${none} shows ${claimText(claim)}.`,
    `With one miss it takes ${one - 1} of ${one}, with two ${two - 2} of ${two}.`,
  ];
}
