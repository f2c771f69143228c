import { type Chance, seededChance } from "../../statistics/chance";

/** Far apart, so that neighboring tries share no chance. */
const TRY_STRIDE = 0x9e3779b1;

/** Chance of one try. @param index - of the try in the sitting, from 0 */
export function tryChance(seed: number, index: number): Chance {
  return seededChance((seed + Math.imul(index + 1, TRY_STRIDE)) | 0);
}
