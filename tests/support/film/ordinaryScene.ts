import { seeded } from "../seeded";
import { seenAt } from "./camera";
import type { Shooting } from "./film";
import { type Leg, motionOf } from "./handMotion";
import { GRIPS, ordinaryFilm } from "./ordinaryFilm";

/** A small picture of an ordinary dial, as a test of the app needs it: quickly drawn, and as good as it must be. */
const SMALL = { width: 320, height: 240, focal: 300, tilt: 20, k1: -0.1 };
const RADIUS = 88;

/** A film in which a hand turns an ordinary dial from rest on 0. @param restMs - before it comes */
export const smallOrdinaryFilm = (legs: readonly Leg[], restMs: number): Shooting =>
  ordinaryFilm({
    motion: motionOf(legs, { restMs }),
    chance: seeded(1),
    camera: SMALL,
    radius: RADIUS,
    fingers: GRIPS.tips,
    handFrom: restMs,
  });

/** Where a person would tap such a film: the middle of the knob's face and the tip of the index, in parts of the picture. */
export function placesToTap({ scene: { camera, knob, disc } }: Shooting) {
  const part = (x: number, y: number, z: number) => {
    const seen = seenAt(camera, [x, y, z]);
    return { x: seen.x / camera.width, y: seen.y / camera.height };
  };
  return { middle: part(0, 0, knob?.height ?? 0), index: part(0, disc.radius + 0.6, 0) };
}
