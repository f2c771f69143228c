import { type Chance, seededChance } from "../../statistics/chance";

/** Far apart, so that neighboring tries share no chance. */
const TRY_STRIDE = 0x9e3779b1;

/** A try that is begun again is another one. */
const AGAIN_STRIDE = 0x7feb352d;

/** Chance of one try. @param index - of the try in the sitting, from 0 @param begunAgain - how often it was begun again */
export function tryChance(seed: number, index: number, begunAgain = 0): Chance {
  return seededChance((seed + Math.imul(index + 1, TRY_STRIDE) + Math.imul(begunAgain, AGAIN_STRIDE)) | 0);
}
