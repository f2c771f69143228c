import type { Graduations } from "../../lock/dial";
import { gapAfter } from "./spindleThread";

/** What a dial screwed into its cam must come to: a gap to the ring, and a keyway that lines up with the spindle's. */
export interface KeywayPuzzle {
  readonly perTurn: number;
  /** Gap with the dial where the puzzle begins, millimeters. */
  readonly gap_mm: number;
  /** Of the spindle's thread, millimeters a turn. */
  readonly lead_mm: number;
  /** The dial must be close and must not rub: least and largest gap, millimeters. */
  readonly gapLimits_mm: readonly [least: number, largest: number];
  /** Places of the cam that take the key, evenly round it; an integer >= 1. The first is the one that zero belongs to. */
  readonly keyways: number;
  /** How far the dial must be turned in from where it begins until the first keyway lines up, graduations in [0, one turn). */
  readonly toFirst: Graduations;
}

/** A place in which the key goes in. */
export interface KeyPlace {
  /** Turned in from the beginning, graduations; negative turned out. */
  readonly turnedIn: Graduations;
  readonly gap_mm: number;
  /** Which keyway; 0 is the right one. */
  readonly keyway: number;
  /** What every number will be off, graduations: a part of a turn for each keyway away from the right one. */
  readonly numbersOff: Graduations;
}

/**
 * All places in which the key goes in and the gap is within its limits, closest to the ring first. There may be none: then
 * another washer or another plate is needed.
 *
 * Source: geometry: places evenly round a circle, and the lead of the thread between them. That a cam takes its key in few
 * places is common practice, no source.
 *
 * @returns places; those with `keyway` 0 are right
 */
export function keyPlaces(puzzle: KeywayPuzzle): readonly KeyPlace[] {
  const { perTurn, gap_mm, lead_mm, gapLimits_mm, keyways, toFirst } = puzzle;
  const [least, largest] = gapLimits_mm;
  const step = perTurn / keyways;
  const stepsTo = (gap: number) => ((gap_mm - gap) / lead_mm) * keyways - toFirst / step;
  const places: KeyPlace[] = [];
  for (let n = Math.floor(stepsTo(least)) + 1; n >= Math.ceil(stepsTo(largest)) - 1; n--) {
    const turnedIn = toFirst + n * step;
    const gap = gapAfter(gap_mm, turnedIn / perTurn, lead_mm);
    if (gap < least || gap > largest) continue;
    const keyway = ((n % keyways) + keyways) % keyways;
    places.push({ turnedIn, gap_mm: gap, keyway, numbersOff: keyway * step });
  }
  return places;
}
