import { seeded } from "../seeded";
import type { Shooting } from "./film";
import { type Leg, motionOf } from "./handMotion";
import { BLACK_DIAL, type DialLook, PAPER_DIAL } from "./ordinaryDial";
import { GRIPS, type OrdinaryFilm, ordinaryFilm } from "./ordinaryFilm";
import { shaken } from "./ordinaryRows";
import type { Finger } from "./scene";

/** A dial on a door before a camera, drawn by chance, and how fast a hand may turn it there. */
export interface RandomDoor {
  readonly film: Omit<OrdinaryFilm, "motion">;
  /** Graduations a second. */
  readonly fastest: number;
  /** Whether it has what the follower does not reckon with. */
  readonly isUnkind: boolean;
}

/** Sets the chance that paints a door apart from those of its films. */
const DOOR_CHANCE = 1e9;

type Between = (least: number, most: number) => number;

/**
 * Conditions within which an ordinary dial must be set up and followed: a camera on a stand up to 30 degrees aslant, 45 to 80
 * pixels of radius, black dials and paper, of 100 and 60 graduations, light that falls off, an exposure up to 16 ms, 2 turns/s and
 * up to 6 graduations of blur. One door in three has what the follower does not reckon with, or only in part: a cone, a wobble, a lens
 * that bends more, gloss, a shadow's edge, a stand that shakes, a rolling shutter.
 */
export function randomDoor(seed: number): RandomDoor {
  const chance = seeded(seed);
  const between: Between = (least, most) => least + (most - least) * chance();
  const isUnkind = chance() < 1 / 3;
  const look = someLook(between);
  const radius = between(45, 80);
  const strength = between(0.4, 1);
  const exposureMs = Math.min(16, between(3, 8) / strength);
  const fastest = Math.min(2 * look.graduations, 6 / (exposureMs / 1000));
  const film = {
    chance: seeded(seed + DOOR_CHANCE),
    look,
    radius,
    camera: someCamera(between, radius),
    light: { strength: () => strength, slopeX: between(-0.4, 0.4), slopeY: between(-0.4, 0.4) },
    disc: { offCenter: { x: between(-0.15, 0.15), y: between(-0.15, 0.15) } },
    sensor: {
      exposureMs,
      readNoise: between(0.5, 2),
      shotNoise: between(1, 3),
      gamma: between(1.8, 2.4),
      blur: between(0.4, 0.8),
    },
    paint: between(100, 200),
    scratches: Math.floor(between(40, 80)),
    fingers: grippedBy(between),
  } satisfies RandomDoor["film"];
  return { film: isUnkind ? unkind(film, between) : film, fastest, isUnkind };
}

function someLook(between: Between): DialLook {
  const dial = between(0, 1) < 0.75 ? BLACK_DIAL : PAPER_DIAL;
  const marks = between(0, 1) < 0.75 ? {} : { graduations: 60, numbered: 5 };
  const weak = between(0, 1) < 0.2 ? { face: 90, ink: 170 } : {};
  return { ...dial, ...marks, ...weak, sense: between(0, 1) < 0.5 ? 1 : -1 };
}

const someCamera = (between: Between, radius: number) => ({
  width: 2 * Math.round(1.6 * radius),
  height: 2 * Math.round(1.4 * radius),
  focal: 4 * radius,
  tilt: between(0, 30),
  tiltFrom: between(180, 360),
  roll: between(-8, 8),
  k1: between(-0.12, 0.03),
});

/** A hand as one of those that there are, from any side but the index's. */
function grippedBy(between: Between): Finger[] {
  const grips: readonly (readonly Finger[])[] = [GRIPS.fromBelow, GRIPS.fromRight, GRIPS.tips];
  const angle = between(-40, 40) * (Math.PI / 180);
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return (grips[Math.floor(between(0, grips.length))] ?? GRIPS.tips).map(({ fromX, fromY, toX, toY, radius }) => ({
    fromX: c * fromX - s * fromY,
    fromY: s * fromX + c * fromY,
    toX: c * toX - s * toY,
    toY: s * toX + c * toY,
    radius,
  }));
}

function unkind(film: RandomDoor["film"], between: Between): RandomDoor["film"] {
  const gloss = { x: between(-0.4, 0.4), y: between(-0.4, 0.4), width: between(0.1, 0.3), strength: between(0, 0.4) };
  const [x, y] = [between(-20, 20), between(-20, 20)];
  const shadow = { x, y, side: between(0, 360), soft: between(4, 20), depth: between(0, 0.5) };
  const shake = shaken(between(0, 0.5), between(0, 1.5));
  return {
    ...film,
    camera: { ...film.camera, k1: between(-0.25, 0.1), shake },
    light: { ...film.light, gloss, shadow },
    disc: { ...film.disc, cone: between(0, 3), wobble: between(0, 1), wobbleTo: between(0, 360) },
    sensor: { ...film.sensor, readoutMs: between(-20, 20) },
  };
}

/** A film of a hand that turns a dial on such a door, some one second and a half long: other hands, speeds and frames each time. */
export function randomTurning({ film, fastest }: RandomDoor, doorSeed: number, seed: number): Shooting {
  const chance = seeded(seed);
  const between: Between = (least, most) => least + (most - least) * chance();
  const legs = Array.from({ length: 2 }, () => someLeg(between, fastest));
  const strength = (film.light?.strength?.(0) ?? 1) * between(0.9, 1.1);
  const shooting = ordinaryFilm({
    ...film,
    // The door is the same: it is drawn by the same chance.
    chance: seeded(doorSeed + DOOR_CHANCE),
    fingers: grippedBy(between),
    light: { ...film.light, strength: () => strength },
    motion: motionOf(legs, { start: between(-200, 200), restMs: between(80, 150) }),
    framesPerSecond: chance() < 0.8 ? 30 : 60,
    dropped: chance() < 0.3 ? 0.1 : 0,
  });
  return { ...shooting, jitterMs: Math.max(0, between(-7, 3)), chance };
}

function someLeg(between: Between, fastest: number): Leg {
  const speed = fastest * between(0.1, 1);
  const side = between(-1, 1) < 0 ? -1 : 1;
  return { by: side * speed * between(0.1, 0.3), speed, restMs: between(80, 200) };
}
