import { type Graduations, type Turn, wrap } from "../lock/dial";
import type { Interval } from "../statistics/interval";
import { sampleSummary } from "../statistics/sample";
import { welchInterval } from "../statistics/welchInterval";

/**
 * Find the play: how far a dial turns before the cam behind it follows. Where the dial stood at each stop, by side.
 *
 * The trainee sees the cam through a window, a mark on it and a line beside it (`ZeroLock.camDeviation`), and the dial
 * under its index (`ZeroLock.seen`). Turning right he stops when the mark has just come to the line, and the dial's
 * reading is kept; turning left he stops at the same line, and it is kept again. The cam stood in the same place both
 * times and the dial did not: after turning left it stands farther left, by the lost motion. He does so several times
 * from each side and then says how large the play is.
 *
 * The quick way shows the same: take up the play to the right and read the dial, then turn left until the mark just
 * moves and read it again.
 */
export type PlayStops = Readonly<Record<Turn, readonly Graduations[]>>;

/** Lost motion as a trainee's stops show it, graduations. */
export interface PlayEstimate {
  /** Mean turning left minus mean turning right. */
  readonly estimate: Graduations;
  /** 95 % interval, Welch. */
  readonly ci95: Interval;
}

/** A trainee's own number for the play, marked. */
export interface PlayMark extends PlayEstimate {
  /** The trainee's number, graduations. */
  readonly answer: Graduations;
  readonly truth: Graduations;
  /** Answer minus truth, graduations; positive is too much. */
  readonly error: Graduations;
  /** Whether the answer lies within the interval of his own stops: whether he read off what he did. */
  readonly isAnswerInside: boolean;
  /** Whether the truth does: whether the stops were good enough, as they are 19 times of 20. */
  readonly isTruthInside: boolean;
}

/**
 * Lost motion from stops of both sides at one place of the cam.
 *
 * @param stops - where the dial stood, graduations, wrapped or not, at least two a side, within half a turn of each other
 * @param perTurn - graduations in one turn
 * @throws {StatisticsError} `empty-sample`, `too-few-values`, `not-finite`
 */
export function playEstimate(stops: PlayStops, perTurn: number): PlayEstimate {
  // Stops of several turns, and on both sides of the mark 0, are brought together before they are averaged.
  const near = stops.right[0] ?? 0;
  const side = (turn: Turn) => sampleSummary(stops[turn].map((stop) => wrap(stop - near, perTurn)));
  const { difference, low, high } = welchInterval(side("left"), side("right"));
  return { estimate: difference, ci95: { low, high } };
}

/**
 * Half of the finest step that a hand makes and a dial is read to, graduations: equal stops do not say that the play is
 * known to a point. Source: JCGM 100:2008, F.2.2.1 (resolution of a display).
 */
const RESOLUTION = 0.05;

const isWithin = (value: number, { low, high }: Interval) => value >= low - RESOLUTION && value <= high + RESOLUTION;

/**
 * Marks a trainee's own number for the play.
 *
 * @param answer - graduations
 * @param truth - the lost motion hidden in the lock, graduations
 * @throws {StatisticsError} as `playEstimate`
 */
export function markPlay(stops: PlayStops, perTurn: number, answer: Graduations, truth: Graduations): PlayMark {
  const { estimate, ci95 } = playEstimate(stops, perTurn);
  return {
    estimate,
    ci95,
    answer,
    truth,
    error: answer - truth,
    isAnswerInside: isWithin(answer, ci95),
    isTruthInside: isWithin(truth, ci95),
  };
}
