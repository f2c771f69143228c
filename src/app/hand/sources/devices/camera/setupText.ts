import type { Rest } from "../../../../../realdial/motion/restNoise";
import type { ShownSighting } from "../../../../../realdial/printed/shownDial";

/** The number that the check is made at, of a dial of 100. */
const CHECKED_AT = 25;
/** Farther from it than this the dial is on its way there, graduations. */
const CHECK_WITHIN = 3;

/** A number of a dial of 100, to a tenth. */
const numberText = (position: number) => {
  const tenths = Math.round(10 * position) % 1000;
  return ((tenths < 0 ? tenths + 1000 : tenths) / 10).toFixed(1);
};

/** Said beside every picture. */
export const PRIVACY = "Pictures never leave this device and are not stored.";

/** What the dial shows. */
export const positionText = (sighting: ShownSighting | null): string =>
  sighting?.position == null ? "Your dial shows: not seen." : `Your dial shows: ${numberText(sighting.position)}.`;

/** How many frames come, and how long one takes. */
export const rateText = (rate: number | null, took: number): string =>
  rate === null
    ? "Frame rate: counting."
    : `Frame rate: ${Math.round(rate)} frames a second, each read in ${Math.round(took)} ms.`;

/** How quiet the readings are. */
export const noiseText = (rest: Rest | null): string =>
  rest === null
    ? "Noise at rest: leave the dial alone for 1 s to measure it."
    : `Noise at rest: ${rest.noise.toFixed(2)} graduations.`;

/** How far from 25 a dial rests that was turned there; asks for it before. @param rest - of now, or null */
export function checkText(rest: Rest | null): string {
  const off = rest === null ? null : rest.position - CHECKED_AT - 100 * Math.round((rest.position - CHECKED_AT) / 100);
  if (off === null || Math.abs(off) > CHECK_WITHIN) return `Check: turn your dial to ${CHECKED_AT}, and stop.`;
  const tenths = Math.abs(off).toFixed(1);
  if (tenths === "0.0") return `Check: at ${CHECKED_AT}, the camera agrees.`;
  return `Check: the camera reads ${tenths} graduations ${off > 0 ? "left" : "right"} of ${CHECKED_AT}.`;
}
