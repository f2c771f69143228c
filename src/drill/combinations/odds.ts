import { Attempt } from "../../dialing/attempt";
import { idealMotion } from "../../dialing/idealMotion";
import type { Combination } from "../../lock/combination";
import type { Graduations } from "../../lock/dial";
import type { Profile } from "../../lock/profile";
import type { Chance } from "../../statistics/chance";
import { probabilityOfConformance } from "../../statistics/conformance";
import { drawNormal } from "../../statistics/drawNormal";
import { combinationProblem } from "../combinationWords";
import { DrillError } from "../drillError";
import { drawCombination } from "./drawCombination";

/** A hand's stop errors: normal, with a bias and a spread (standard deviation), graduations along the turn. */
export interface Hand {
  readonly bias: Graduations;
  readonly spread: Graduations;
}

/** How much each stop may be off, in dialing order, graduations. */
function tolerances(profile: Profile): readonly Graduations[] {
  return profile.kind === "wheel-pack"
    ? profile.wheelPack.gateTolerance
    : profile.procedure.map(() => profile.stopTolerance);
}

function checkHand({ bias, spread }: Hand): void {
  if (!Number.isFinite(bias)) throw new DrillError(combinationProblem("bad-bias", ["bias"], { found: bias }));
  if (!(spread >= 0 && spread < Infinity)) {
    throw new DrillError(combinationProblem("bad-spread", ["spread"], { found: spread }));
  }
}

/**
 * Probability that an attempt opens, in closed form: the product over the numbers of P(|e| <= tolerance).
 *
 * Turns are taken to be counted right; stops are independent of each other.
 *
 * @throws {DrillError} for a bias or spread that is none
 */
export function chanceOfOpening(profile: Profile, hand: Hand): number {
  checkHand(hand);
  const knowledge = { mean: hand.bias, standardUncertainty: hand.spread };
  return tolerances(profile).reduce(
    (product, tolerance) => product * probabilityOfConformance(knowledge, { low: -tolerance, high: tolerance }),
    1,
  );
}

/** What simulated attempts came to. */
export interface SimulatedOdds {
  readonly trials: number;
  readonly opened: number;
  readonly probability: number;
  /** Standard error of the probability, binomial: sqrt(p(1 - p)/n). */
  readonly standardError: number;
}

/**
 * Probability that an attempt opens, by dialing drawn combinations on the lock itself with simulated stops.
 *
 * @param trials - attempts, an integer >= 1
 * @param combination - to dial the same one every time; else one is drawn by the profile's rules for each attempt
 * @throws {DrillError} for what cannot be
 */
export function simulateOdds(
  profile: Profile,
  hand: Hand,
  trials: number,
  chance: Chance,
  combination?: Combination,
): SimulatedOdds {
  checkHand(hand);
  if (!(Number.isInteger(trials) && trials >= 1)) {
    throw new DrillError(combinationProblem("bad-trials", ["trials"], { found: trials }));
  }
  let opened = 0;
  for (let trial = 0; trial < trials; trial++) {
    if (opens(profile, combination ?? drawCombination(profile, chance), hand, chance)) opened += 1;
  }
  const probability = opened / trials;
  return { trials, opened, probability, standardError: Math.sqrt((probability * (1 - probability)) / trials) };
}

function opens(profile: Profile, combination: Combination, { bias, spread }: Hand, chance: Chance): boolean {
  const from = chance() * profile.graduations;
  const errors = combination.map(() => drawNormal(chance, bias, spread));
  const [start = from, ...stops] = idealMotion(profile, combination, from, errors);
  const attempt = new Attempt(profile, combination, { dial: start });
  for (const stop of stops) attempt.turnBy(stop - attempt.dial);
  return attempt.opened;
}
