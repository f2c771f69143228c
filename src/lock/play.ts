import type { Graduations } from "./dial";

/** Room between a part and the one that drives it: how far it may stay right and left of it, graduations, 0 or more. */
export interface Play {
  readonly right: Graduations;
  readonly left: Graduations;
}

/** Friction behind a springy grip lets a part lag on either side alike. @param lag - graduations, 0 or more */
export const lagging = (lag: Graduations): Play => ({ right: lag, left: lag });

/**
 * The play operator: a part stays where it is until the one that drives it comes to the end of the room between them,
 * and then goes with it. Lost motion, dry friction and free play are all of this kind. (The wheels of a pack are too, but
 * reckon it in place, for speed.)
 *
 * Source: Krasnosel'skii and Pokrovskii, "Systems with Hysteresis" (1989), chapter 2.
 *
 * @param part - where the part stands, graduations, left positive
 * @param driver - where the driver stands now
 * @returns where the part stands now
 */
export const driven = (part: Graduations, driver: Graduations, { right, left }: Play): Graduations =>
  Math.min(Math.max(part, driver - right), driver + left);
