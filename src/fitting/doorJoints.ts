import type { TrainSpec } from "../lock/train/lockTrain";
import { type Fit, jointsOf } from "./fit";

/**
 * The joints of a lock so fitted as they are at the door, where ring and key are told apart: turning the ring never makes up
 * for a key in another keyway.
 *
 * `jointsOf` has both in one, as an address has: no index reads otherwise for that.
 */
export const doorJoints = (fit: Fit, perTurn: number): Omit<TrainSpec, "start"> => ({
  // The key is as far off on the cam as the cam is off the dial: it meets the lever at the same place of the dial.
  ...jointsOf({ ...fit, numbersOff: 0 }, perTurn),
  keyedOff: fit.numbersOff,
});
