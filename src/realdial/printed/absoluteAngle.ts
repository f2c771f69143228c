import type { Phase } from "./trackPhase";

/** A track's cycles in a turn, and what it shows. */
export interface TrackPhase extends Phase {
  readonly cycles: number;
}

/** Where the disc is within its turn, by all tracks. */
export interface AbsoluteAngle {
  /** Turns to the left, 0 to before 1. */
  readonly turns: number;
  /** Standard deviation, turns. */
  readonly spread: number;
  /** How much worse the next angle fits that is no neighbor: half the difference of chi², so that 5 is 150 to 1. */
  readonly margin: number;
  /** How badly it fits itself: half of chi². */
  readonly misfit: number;
}

/** An expected angle and how far it may be off, in turns. */
export interface Expected {
  readonly turns: number;
  readonly spread: number;
}

const TAU = 2 * Math.PI;

/**
 * The angle that fits the phases of all tracks best: the finest one leaves one angle in each of its cycles, and the
 * others choose among them.
 *
 * @param phases - the finest first, at least one
 */
export function absoluteAngle(phases: readonly TrackPhase[], expected: Expected | null): AbsoluteAngle {
  const { cycles, phase } = phases[0] as TrackPhase;
  let [best, least, next] = [0, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (let k = 0; k < cycles; k++) {
    const turns = (phase / TAU + k) / cycles;
    const cost = misfit(phases, expected, turns);
    if (cost < least) [best, least, next] = [turns, cost, least];
    else next = Math.min(next, cost);
  }
  const { turns, spread } = refined(phases, best);
  return { turns: turns - Math.floor(turns), spread, margin: next - least, misfit: misfit(phases, null, turns) };
}

/** Half of chi², for phases by what of it is told within a cycle. */
function misfit(phases: readonly TrackPhase[], expected: Expected | null, turns: number): number {
  let sum = 0;
  for (const { cycles, phase, spread } of phases)
    sum += (1 - Math.cos(TAU * cycles * turns - phase)) / (spread * spread);
  if (expected !== null) {
    const off = turns - expected.turns;
    sum += ((off - Math.round(off)) / expected.spread) ** 2 / 2;
  }
  return sum;
}

/** The weighed mean of what all tracks say near an angle. */
function refined(phases: readonly TrackPhase[], near: number): { turns: number; spread: number } {
  let [sum, weights] = [0, 0];
  for (const { cycles, phase, spread } of phases) {
    const off = (phase / TAU - cycles * near) % 1;
    const weight = ((TAU * cycles) / spread) ** 2;
    sum += (weight * (off - Math.round(off))) / cycles;
    weights += weight;
  }
  return { turns: near + sum / weights, spread: 1 / Math.sqrt(weights) };
}
