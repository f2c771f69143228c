import type { Leg } from "./handMotion";

/** Turned in the slow turn: once round and a bit, then back onto 0. */
const OVER = 6;

/**
 * What a film for the fake camera begins with: from rest on 0 the slow turn by which an ordinary dial is learned, and back onto 0.
 *
 * @param restMs - the rest on 0 after it
 */
export const slowTurnLegs = (graduations: number, restMs: number): readonly Leg[] => [
  { by: graduations + OVER, speed: 14, restMs: 300 },
  { by: -OVER, speed: 14, restMs },
];
