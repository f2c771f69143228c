import { Camcorder, type Picture } from "./camcorder";
import type { Motion } from "./handMotion";
import type { Scene, Sensor } from "./scene";

/** What a film is made of beside its scene. Chances are of single frames. */
export interface Shooting {
  readonly scene: Omit<Scene, "turns">;
  readonly sensor: Sensor;
  readonly motion: Motion;
  readonly graduations: number;
  readonly framesPerSecond: number;
  /** Chance that a frame never comes. */
  readonly dropped?: number;
  /** Whether a frame at a time (ms) comes black. */
  readonly isBlack?: (at: number) => boolean;
  /** SD of what a frame's time tag is off, ms. */
  readonly jitterMs?: number;
  readonly chance: () => number;
}

/** A frame and the truth about it. */
export interface FilmFrame {
  /** The time it is tagged with, ms. */
  readonly at: number;
  readonly picture: Picture;
  readonly truth: {
    /** When its middle row was exposed, ms. */
    readonly at: number;
    /** Graduations, unwrapped, left positive. */
    readonly position: number;
    /** Graduations a second, then. */
    readonly speed: number;
    /** The fastest while any of its rows was exposed, without its direction. */
    readonly fastest: number;
  };
}

/** The frames of a film, each made when it is asked for. */
export function* filmed(shooting: Shooting): Generator<FilmFrame> {
  const { motion, graduations, sensor, chance, framesPerSecond, dropped = 0, jitterMs = 0, isBlack } = shooting;
  const scene: Scene = { ...shooting.scene, turns: (at) => motion.positionAt(at) / graduations };
  const camcorder = new Camcorder(scene, sensor, chance);
  const count = Math.floor((motion.durationMs * framesPerSecond) / 1000);
  for (let i = 0; i < count; i++) {
    const at = ((i + 0.5) * 1000) / framesPerSecond;
    const isDropped = chance() < dropped;
    const off = jitterMs * (chance() + chance() + chance() + chance() - 2) * Math.sqrt(3);
    if (isDropped) continue;
    const picture = isBlack?.(at) === true ? blackPicture(scene) : camcorder.pictureAt(at);
    const fastest = fastestWithin(motion, at, (sensor.exposureMs + Math.abs(sensor.readoutMs)) / 2);
    yield { at: at + off, picture, truth: { at, position: motion.positionAt(at), speed: motion.speedAt(at), fastest } };
  }
}

/** Speed without its direction, the fastest of some times around one. @param half - how far around it, ms */
const fastestWithin = (motion: Motion, at: number, half: number) =>
  Math.max(
    ...[-1, -0.75, -0.5, -0.25, 0, 0.25, 0.5, 0.75, 1].map((part) => Math.abs(motion.speedAt(at + part * half))),
  );

const blackPicture = ({ camera: { width, height } }: Scene): Picture => ({
  width,
  height,
  data: new Uint8Array(width * height).fill(2),
});
