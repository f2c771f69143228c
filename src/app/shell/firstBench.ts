import { spunOffDial } from "../../dialing/spunOffStart";
import { seededChance } from "../../statistics/chance";
import { dialRotation, FLUTES } from "../hand/dial/dialGeometry";
import { FIRST_FACE } from "../hand/dial/firstFace";
import { pageOf, type Route } from "./address";

/** The bench that is asked for nothing, as it writes its own address. */
export const FIRST_BENCH = "profile=three-wheel&help=full";

/** Whether an address asks for the bench that the page has a picture of. */
export const isFirstBench = (route: Route): boolean =>
  pageOf(route) === "bench" && ["", FIRST_BENCH].includes(`${route.query}`);

/** Where its dial stands first, graduations. @param seed - of the visit */
const firstDial = (seed: number) => spunOffDial(FIRST_FACE.graduations, seededChance(seed));

/**
 * How far dial and knob are turned on a bench of this seed, degrees clockwise. The knob by less than a flute, which looks the
 * same: the light on it would turn with it.
 */
export function firstTurn(seed: number): { readonly dial: number; readonly knob: number } {
  const dial = dialRotation(firstDial(seed), FIRST_FACE.graduations);
  return { dial, knob: dial % (360 / FLUTES) };
}

/** A seed with which the dial stands at 0: for the picture, which is turned from there. */
export function seedAtZero(seed = 1): number {
  return firstDial(seed) === 0 ? seed : seedAtZero(seed + 1);
}
