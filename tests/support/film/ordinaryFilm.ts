import type { Camera } from "./camera";
import type { Shooting } from "./film";
import { holding, type Leg, type Motion, motionOf } from "./handMotion";
import { BLACK_DIAL, type DialLook, dialTexture, doorTexture } from "./ordinaryDial";
import {
  type Disc,
  EVEN_LIGHT,
  type Finger,
  GOOD_SENSOR,
  type Knob,
  type Light,
  type Sensor,
  STRAIGHT_CAMERA,
  TRUE_DISC,
} from "./scene";

/** What is unusual about a film of an ordinary dial. */
export interface OrdinaryFilm {
  readonly motion: Motion;
  readonly chance: () => number;
  readonly look?: Partial<DialLook>;
  readonly camera?: Partial<Camera>;
  readonly light?: Partial<Light>;
  readonly disc?: Partial<Disc>;
  readonly knob?: Partial<Knob>;
  readonly sensor?: Partial<Sensor>;
  /** Radius of the dial on the picture, pixels; sets the camera's distance. */
  readonly radius?: number;
  /** How the hand holds the knob; none for a dial that turns by itself. */
  readonly fingers?: readonly Finger[];
  /** When the hand comes, ms. */
  readonly handFrom?: number;
  readonly framesPerSecond?: number;
  readonly dropped?: number;
  readonly isBlack?: (at: number) => boolean;
  /** Parts of the door's paint: how light it is, scratches. */
  readonly paint?: number;
  readonly scratches?: number;
}

/** Ways to hold a knob, about its axis, millimeters. */
export const GRIPS = {
  /** Thumb and two fingers from below; covers some two fifths of the ring. */
  fromBelow: [
    { fromX: 14, fromY: 3, toX: 50, toY: -80, radius: 5.5 },
    { fromX: -14, fromY: 4, toX: 4, toY: -90, radius: 6 },
    { fromX: 10, fromY: 10, toX: 60, toY: -70, radius: 5.5 },
  ],
  /** From the right, flat over the ring. */
  fromRight: [
    { fromX: 2, fromY: 14, toX: 90, toY: 25, radius: 6 },
    { fromX: 4, fromY: -13, toX: 90, toY: -25, radius: 7 },
  ],
  /** Fingertips on the knob, seen from their side: little is covered. */
  tips: [
    { fromX: 12, fromY: -4, toX: 30, toY: -95, radius: 5 },
    { fromX: -10, fromY: -8, toX: 16, toY: -95, radius: 5 },
  ],
  /** A whole fist: most of the ring is covered. */
  fist: [
    { fromX: 15, fromY: 3, toX: 55, toY: -75, radius: 9 },
    { fromX: -15, fromY: 4, toX: 5, toY: -90, radius: 10 },
    { fromX: 6, fromY: 15, toX: 75, toY: -45, radius: 9 },
    { fromX: 0, fromY: 0, toX: 40, toY: -80, radius: 12 },
  ],
} satisfies Record<string, readonly Finger[]>;

/** A film of an ordinary dial on a door: a hand turns it by its knob, a camera on a stand looks on. */
export function ordinaryFilm(film: OrdinaryFilm): Shooting {
  const { motion, chance } = film;
  const look = { ...BLACK_DIAL, ...film.look };
  const wide = { ...STRAIGHT_CAMERA, width: 640, height: 480, focal: 600, tilt: 20, ...film.camera };
  const camera = { ...wide, distance: (wide.focal * look.radius) / (film.radius ?? 150) };
  const texels = (2 * camera.focal) / camera.distance;
  const door = {
    widthMm: Math.min(420, (2 * camera.width * camera.distance) / camera.focal),
    heightMm: Math.min(420, (2 * camera.width * camera.distance) / camera.focal),
    dialRadius: look.radius,
    ringRadius: 1.35 * look.radius,
    paint: film.paint ?? 150,
    ring: 90,
    ink: 240,
    scratches: film.scratches ?? 60,
    chance,
  };
  const shared = {
    camera,
    light: { ...EVEN_LIGHT, slopeX: 0.3, slopeY: 0.2, ...film.light },
    base: { texture: doorTexture(door, texels) },
    disc: { ...TRUE_DISC, texture: dialTexture(look, texels), radius: look.radius, ...film.disc },
    knob: { radius: 0.36 * look.radius, height: 0.65 * look.radius, reflectance: 0.12, flutes: 24, ...film.knob },
  };
  const hand = {
    fingers: film.fingers ?? [],
    height: 0.85 * look.radius,
    reflectance: 0.45,
    place: holding(motion, look.graduations, { from: film.handFrom ?? 0 }),
  };
  return {
    scene: film.fingers === undefined ? shared : { ...shared, hand },
    sensor: { ...GOOD_SENSOR, blur: 0.6, ...film.sensor },
    motion,
    graduations: look.graduations,
    framesPerSecond: film.framesPerSecond ?? 30,
    chance,
    ...(film.dropped === undefined ? {} : { dropped: film.dropped }),
    ...(film.isBlack === undefined ? {} : { isBlack: film.isBlack }),
  };
}

/** Runs of a hand that dials: so far and so fast as chance says. */
export function dialedLegs(chance: () => number, count: number, fastest: number): Leg[] {
  return Array.from({ length: count }, (_, i) => ({
    by: (i % 2 === 0 ? 1 : -1) * (20 + 260 * chance()),
    speed: fastest * (0.3 + 0.7 * chance()),
    restMs: 400 + 400 * chance(),
  }));
}

/** The slow turn that sets an ordinary dial up, left from rest on 0. */
export const slowTurn = (graduations: number, seconds = 9): Motion =>
  motionOf([{ by: 1.08 * graduations, speed: (1.875 * 1.08 * graduations) / seconds, restMs: 300 }], { restMs: 600 });
