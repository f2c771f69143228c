import type { Graduations } from "./dial";
import { exact } from "./exact";
import type { WheelPackProfile } from "./profile";

/**
 * Offset of each wheel's gate, so that the combination reads true on the dial: a wheel set by a right turn leads the
 * cam by the whole play between them.
 *
 * @returns graduations, wheel 1 first
 */
export function gateOffsets(profile: WheelPackProfile): Graduations[] {
  const { freePlay } = profile.wheelPack;
  return profile.procedure.map((step, k) =>
    step.turn === "left" ? 0 : exact(freePlay.slice(k).reduce((sum, play) => sum + play, 0)),
  );
}
