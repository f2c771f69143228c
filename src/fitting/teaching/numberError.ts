import type { Graduations } from "../../lock/dial";
import { readsTooMuch } from "../../lock/train/runout";
import type { Fit } from "../fit";

/**
 * What the opening index reads too much with a number at it, as fitted. A number that it shows is dialed by as much too low.
 *
 * The ring's part is the same at every number. What goes round with the dial goes by where the dial is: at the number, less
 * what the ring reads too much (plane trigonometry, as `lock/train/runout`).
 *
 * @param number - that the index shows, graduations
 * @returns graduations
 */
export const numberReads = (
  { openingReads, runout }: Pick<Fit, "openingReads" | "runout">,
  number: Graduations,
  perTurn: number,
): Graduations => openingReads + readsTooMuch(runout, number - openingReads, perTurn);

/** The same once zero was set at the opening index: what no zero compensates for. 0 at zero itself. */
export const numberReadsAfterZero = (
  fit: Pick<Fit, "openingReads" | "runout">,
  number: Graduations,
  perTurn: number,
): Graduations => numberReads(fit, number, perTurn) - numberReads(fit, 0, perTurn);
