import type { Rest } from "../../../../../realdial/motion/restNoise";
import type { ShownSighting } from "../../../../../realdial/printed/shownDial";

/** A camera sees hundredths of a turn, whatever the dial shows. */
const SEEN_PER_TURN = 100;

/** What a dial of so many graduations shows, to a tenth. */
function numberText(seen: number, perTurn: number): string {
  const tenths = Math.round((10 * seen * perTurn) / SEEN_PER_TURN) % (10 * perTurn);
  return ((tenths < 0 ? tenths + 10 * perTurn : tenths) / 10).toFixed(1);
}

/** Said beside every picture. */
export const PRIVACY = "Pictures never leave this device and are not stored.";

/** What the dial shows. @param perTurn - its graduations @param isReversed - whether its numbers go down as it is turned left */
export const positionText = (sighting: ShownSighting | null, perTurn: number, isReversed: boolean): string =>
  sighting?.position == null
    ? "Your dial shows: not seen."
    : `Your dial shows: ${numberText(isReversed ? -sighting.position : sighting.position, perTurn)}.`;

/** How many frames come, and how long one takes. */
export const rateText = (rate: number | null, took: number): string =>
  rate === null
    ? "Frame rate: counting."
    : `Frame rate: ${Math.round(rate)} frames a second, each read in ${Math.round(took)} ms.`;

/** A standard deviation of readings, graduations, to a hundredth. */
export const noiseSizeText = (noise: number): string =>
  noise < 0.005 ? "under 0.01 graduations" : `${noise.toFixed(2)} graduations`;

/** How quiet the readings are. @param perTurn - graduations of the dial */
export const noiseText = (rest: Rest | null, perTurn: number): string =>
  rest === null
    ? "Noise at rest: leave the dial alone for 1 s to measure it."
    : `Noise at rest: ${noiseSizeText((rest.noise * perTurn) / SEEN_PER_TURN)}.`;
