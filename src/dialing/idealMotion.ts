import type { Combination } from "../lock/combination";
import { type Graduations, signOf } from "../lock/dial";
import { exact } from "../lock/exact";
import type { Profile } from "../lock/profile";
import { drawLength } from "./fault";
import { distanceTo } from "./runs";

/**
 * Where a run must stop so that a number has come to the index as often as asked.
 *
 * @param from - where the run starts, unwrapped graduations
 * @param index - which number, from 0
 * @returns unwrapped position of the stop, graduations
 */
export function stopAfter(profile: Profile, combination: Combination, from: Graduations, index: number): Graduations {
  const step = profile.procedure[index];
  if (step === undefined) return from;
  const s = signOf(step.turn);
  // A mark within the stop tolerance is the one the run starts on.
  const clear = from + s * profile.stopTolerance;
  const first = clear + s * distanceTo(combination[index] ?? 0, clear, step.turn, profile.graduations);
  return exact(first + s * (step.arrivals - 1) * profile.graduations);
}

/**
 * The motion that dials a combination: the stops, and the end of the draw.
 *
 * @param from - where the dial stands, unwrapped graduations
 * @param stopErrors - how far each stop runs past (positive) or falls short, graduations; none for a perfect hand
 * @param overdraw - how far the hand pushes beyond the positive stop, graduations
 * @returns unwrapped positions, the start first
 */
export function idealMotion(
  profile: Profile,
  combination: Combination,
  from: Graduations,
  stopErrors: readonly Graduations[] = [],
  overdraw: Graduations = 0,
): Graduations[] {
  const path = [from];
  let position = from;
  profile.procedure.forEach((step, k) => {
    position = exact(stopAfter(profile, combination, position, k) + signOf(step.turn) * (stopErrors[k] ?? 0));
    path.push(position);
  });
  path.push(exact(position + signOf(profile.draw.turn) * (drawLength(profile, position) + overdraw)));
  return path;
}
