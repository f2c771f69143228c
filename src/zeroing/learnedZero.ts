import { type Graduations, signOf, type Turn, wrap } from "../lock/dial";
import type { LearnedZero } from "../lock/train/learnedZero";
import { mean } from "../statistics/sample";
import type { ZeroReading } from "./zeroingMachine";
import type { ZeroLock } from "./zeroLock";

/**
 * The zero a lock learns: the mean of what its encoder read at the cam, for each direction apart.
 *
 * It learns from the cam, never from what the screen shows.
 *
 * @throws {StatisticsError} `empty-sample` when a side has no reading
 */
export function learnZero(accepted: Readonly<Record<Turn, readonly ZeroReading[]>>): LearnedZero {
  const side = (turn: Turn) => mean(accepted[turn].map(({ cam }) => cam));
  return { right: side("right"), left: side("left") };
}

/**
 * How much of a stop error comes from the zero, and not from the hand.
 *
 * @param turn - direction of the run that ended in the stop
 * @returns graduations along the turn; positive makes the lock see the stop as run past
 */
export function zeroShare(lock: ZeroLock, zero: LearnedZero, turn: Turn): Graduations {
  return -signOf(turn) * wrap(zero[turn] - lock.trueZero(turn), lock.perTurn) + 0;
}

/**
 * How much of a stop error comes from the fit of the dial, and neither from zero nor from the hand: what the index reads
 * otherwise than at zero, as the dial goes round with its error.
 *
 * @param stop - where the lock took the dial to be, graduations
 * @param turn - direction of the run that ended there
 * @returns graduations along the turn; positive makes the lock see the stop as run past
 */
export function fitShare(lock: ZeroLock, zero: LearnedZero, stop: Graduations, turn: Turn): Graduations {
  const atZero = lock.indexErrorAt(0);
  const dial = stop + zero[turn] - lock.trueZero(turn) + lock.indexErrorAt(atZero);
  return signOf(turn) * (lock.indexErrorAt(dial) - lock.indexErrorAt(atZero)) + 0;
}
