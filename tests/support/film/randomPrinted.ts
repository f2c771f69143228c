import { seeded } from "../seeded";
import type { Leg } from "./handMotion";
import type { PrintedConditions } from "./printedFilm";

/**
 * Conditions of a film within which a printed dial must be read: a camera up to 35 degrees aslant and any way round, a lens
 * that bends, light that falls off, a hand, a disc that is glued on badly, 2.5 turns/s and up to 8 graduations of blur. One film
 * in three has what the follower does not reckon with: a cone, curled paper, gloss.
 */
export function randomPrinted(seed: number): PrintedConditions {
  const chance = seeded(seed);
  const between: Between = (least, most) => least + (most - least) * chance();
  const strength = between(0.15, 1);
  const exposureMs = Math.min(33, between(2, 6) / strength);
  const fastest = Math.min(250, 8 / (exposureMs / 1000));
  const isUnkind = chance() < 1 / 3;
  return {
    camera: someCamera(between),
    fills: between(0.75, 0.85),
    disc: { ...someDisc(between), ...(isUnkind && someBend(between)) },
    ...(isUnkind && { baseCurl: { rise: between(0, 1.5), direction: between(0, 180) } }),
    light: { strength: () => strength, ...someLight(between, isUnkind) },
    sensor: {
      exposureMs,
      readoutMs: Math.max(0, between(-20, 20)),
      readNoise: between(0.5, 2),
      shotNoise: between(1, 3),
      gamma: between(1.6, 2.6),
      blur: between(0.4, 0.9),
      moments: exposureMs * fastest > 2000 ? 8 : 4,
    },
    ...(chance() < 0.85 && { handFrom: between(0, 360), fingers: Math.floor(between(2, 5)) }),
    legs: Array.from({ length: 2 }, () => someLeg(between, fastest)),
    start: between(-300, 300),
    restMs: between(60, 150),
    framesPerSecond: chance() < 0.8 ? 30 : 60,
    dropped: chance() < 0.3 ? 0.1 : 0,
    jitterMs: Math.max(0, between(-7, 3)),
  };
}

type Between = (least: number, most: number) => number;

const someCamera = (between: Between) => ({
  width: 288,
  height: 216,
  focal: between(240, 320),
  tilt: between(0, 35),
  tiltFrom: between(0, 360),
  roll: 90 * Math.floor(between(0, 4)) + between(-12, 12),
  k1: between(-0.15, 0.05),
});

const someDisc = (between: Between) => ({
  height: between(3, 15),
  seat: { x: between(-2, 2), y: between(-2, 2) },
  offCenter: { x: between(-1.5, 1.5), y: between(-1.5, 1.5) },
  wobble: between(0, 1.5),
  wobbleTo: between(0, 360),
});

const someBend = (between: Between) => ({
  cone: between(0, 3),
  curl: { rise: between(-1.5, 1.5), direction: between(0, 180) },
});

const someLight = (between: Between, isGlossy: boolean) => ({
  slopeX: between(-0.2, 0.2),
  slopeY: between(-0.2, 0.2),
  ...(isGlossy && {
    gloss: { x: between(-0.4, 0.4), y: between(-0.4, 0.4), width: between(0.1, 0.3), strength: between(0, 0.4) },
  }),
  ...(between(0, 1) < 0.3 && {
    shadow: {
      x: between(-40, 40),
      y: between(-40, 40),
      side: between(0, 360),
      soft: between(2, 30),
      depth: between(0, 0.6),
    },
  }),
});

/** A leg that lasts half a second or so. */
function someLeg(between: Between, fastest: number): Leg {
  const speed = fastest * between(0, 1) ** 2 + 10;
  const side = between(-1, 1) < 0 ? -1 : 1;
  return { by: side * speed * between(0.1, 0.3), speed, restMs: between(30, 200) };
}
