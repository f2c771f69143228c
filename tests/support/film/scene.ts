import type { Camera } from "./camera";
import type { Texture } from "./texture";

/** Paper that bends: it rises by so many millimeters at 100 mm from its middle, along one direction (degrees). */
export interface Curl {
  readonly rise: number;
  readonly direction: number;
}

/** What lies still: a sheet, a door. */
export interface Base {
  readonly texture: Texture;
  readonly curl?: Curl;
}

/** What turns. Angles in degrees, the rest in millimeters. */
export interface Disc {
  readonly texture: Texture;
  readonly radius: number;
  /** Of its face at the rim, above the base. */
  readonly height: number;
  /** Axis of rotation on the base. */
  readonly seat: { readonly x: number; readonly y: number };
  /** Middle of the print from the axis of rotation; turns with the disc. */
  readonly offCenter: { readonly x: number; readonly y: number };
  /** The face is not square to its axis; the high side turns with the disc. */
  readonly wobble: number;
  readonly wobbleTo: number;
  /** How much the middle lies above the rim: a conical face. */
  readonly cone: number;
  readonly curl?: Curl;
  /** Reflectance of its side. */
  readonly side: number;
}

/** A cylinder around the disc's axis, with grips that turn with it. */
export interface Knob {
  readonly radius: number;
  /** Of its top, above the base. */
  readonly height: number;
  readonly reflectance: number;
  /** Grips around it; 0 for a smooth one. */
  readonly flutes: number;
}

/** A finger: a thick line above the base, millimeters. */
export interface Finger {
  readonly fromX: number;
  readonly fromY: number;
  readonly toX: number;
  readonly toY: number;
  readonly radius: number;
}

/** Where a hand is: turned about the disc's axis (degrees) and moved (millimeters). */
export interface HandPlace {
  readonly angle: number;
  readonly x: number;
  readonly y: number;
}

/** A hand over the knob: fingers in one plane, given about the disc's axis. */
export interface Hand {
  readonly fingers: readonly Finger[];
  readonly height: number;
  readonly reflectance: number;
  /** Where it is at a time (ms); nowhere while it is off. */
  readonly place: (at: number) => HandPlace | undefined;
}

/** Light of the scene. */
export interface Light {
  /** Of the whole, at a time in ms: 1 is a white sheet just below white. */
  readonly strength: (at: number) => number;
  /** How much brighter it grows over 100 mm to the right and up. */
  readonly slopeX: number;
  readonly slopeY: number;
  /** A straight shadow over part of the scene; `side` is the direction in degrees to which it darkens. */
  readonly shadow?: {
    readonly x: number;
    readonly y: number;
    readonly side: number;
    readonly soft: number;
    readonly depth: number;
  };
  /** Gloss of everything that is printed: a light from this direction (of unit length), its width in radians. */
  readonly gloss?: { readonly x: number; readonly y: number; readonly width: number; readonly strength: number };
  /** Of what raised things cast onto what is below them: to the right and up for each millimeter of height, and how dark. */
  readonly cast: { readonly x: number; readonly y: number; readonly depth: number };
}

/** All that is in front of a camera. */
export interface Scene {
  readonly camera: Camera;
  readonly light: Light;
  readonly base: Base;
  readonly disc: Disc;
  readonly knob?: Knob;
  readonly hand?: Hand;
  /** Turned angle of the disc at a time (ms): full turns, left positive. */
  readonly turns: (at: number) => number;
}

/** What turns light into numbers. */
export interface Sensor {
  readonly exposureMs: number;
  /** From the first row to the last; 0 for all rows at once. */
  readonly readoutMs: number;
  /** SD of the noise in grays (0 to 255 before gamma): what is always there, and what white adds. */
  readonly readNoise: number;
  readonly shotNoise: number;
  /** Of the numbers that come out: 1 for straight ones. */
  readonly gamma: number;
  /** SD of the lens's blur, pixels. */
  readonly blur: number;
  /** Moments of each exposure that are added up: 1, 4 or 8. */
  readonly moments: 1 | 4 | 8;
}

/** A camera on a stand above the middle. */
export const STRAIGHT_CAMERA: Camera = {
  width: 320,
  height: 240,
  focal: 320,
  distance: 300,
  aim: { x: 0, y: 0 },
  tilt: 0,
  tiltFrom: 270,
  roll: 0,
  k1: 0,
  k2: 0,
};

/** Even light without gloss. */
export const EVEN_LIGHT: Light = {
  strength: () => 0.9,
  slopeX: 0,
  slopeY: 0,
  cast: { x: -0.4, y: -0.6, depth: 0.3 },
};

/** A good sensor in a good light. */
export const GOOD_SENSOR: Sensor = {
  exposureMs: 8,
  readoutMs: 0,
  readNoise: 1,
  shotNoise: 1.5,
  gamma: 2.2,
  blur: 0,
  moments: 4,
};

/** A disc that sits as it should. */
export const TRUE_DISC: Omit<Disc, "texture" | "radius"> = {
  height: 8,
  seat: { x: 0, y: 0 },
  offCenter: { x: 0, y: 0 },
  wobble: 0,
  wobbleTo: 0,
  cone: 0,
  side: 0.2,
};
