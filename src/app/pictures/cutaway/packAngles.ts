import type { Graduations } from "../../../lock/dial";
import type { CutawayView } from "./cutawayView";

/** Angles that a drive pin and a fly take up, half of each. */
const PIN_HALF_ANGLE = 8;
const FLY_HALF_ANGLE = 9;

/** Half the angle that a pin cannot use: the fly's and its own. A fixed fly is as wide as its joint lacks play. */
function blockedAngle(freePlay: Graduations, perTurn: number): number {
  return Math.max(PIN_HALF_ANGLE + FLY_HALF_ANGLE, 180 - (180 * freePlay) / perTurn);
}

/** Half the angle that a fly takes up, degrees. */
export function flyHalfAngle(freePlay: Graduations, perTurn: number): number {
  return blockedAngle(freePlay, perTurn) - PIN_HALF_ANGLE;
}

/** How far the parts of one wheel have turned, degrees. */
export interface WheelAngles {
  readonly gate: number;
  readonly fly: number;
  /** Of the drive pin that reaches it from its driver. */
  readonly pin: number;
}

/**
 * How far everything has turned, wheel 1 first.
 *
 * A fly moves in its wheel by just what makes up for the width of fly and pin; where it hangs between its two ends nobody
 * can tell, so it is drawn as far along as the play is used up.
 */
export function packAngles({ wheels, cam, perTurn }: Pick<CutawayView, "wheels" | "cam" | "perTurn">): WheelAngles[] {
  const degrees = 360 / perTurn;
  let driver = cam.position;
  return wheels
    .toReversed()
    .map(({ error, slack, freePlay }) => {
      const pin = (driver * degrees) % 360;
      const blocked = blockedAngle(freePlay, perTurn);
      const used = freePlay > 0 ? slack / freePlay : 0;
      driver += slack;
      return { gate: error * degrees, fly: pin + blocked + used * (360 - 2 * blocked), pin };
    })
    .reverse();
}

/** How far the cam gate has turned from the nose, degrees. */
export function camAngle({ cam, perTurn }: Pick<CutawayView, "cam" | "perTurn">): number {
  return ((cam.pastNose * 360) / perTurn) % 360;
}
