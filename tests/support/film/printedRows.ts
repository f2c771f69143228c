import type { PrintedConditions } from "./printedFilm";

const GLARE = { x: 0.1, y: -0.25, width: 0.25, strength: 0.5 };

/** Films of a printed dial under conditions that have a name: rows of the table. */
export const PRINTED_ROWS: Readonly<Record<string, PrintedConditions>> = {
  "desk, no hand": {},
  "hand on, 20 degrees": { camera: { tilt: 20 }, handFrom: 300 },
  "tilt 35, hand, glare, noise, wobble": {
    camera: { tilt: 35, tiltFrom: 250 },
    handFrom: 280,
    light: { gloss: GLARE },
    sensor: { readNoise: 3, shotNoise: 4, exposureMs: 12 },
    disc: { wobble: 1.5, height: 12 },
  },
  "dim, exposure 1/30 s, hand": {
    handFrom: 300,
    camera: { tilt: 15 },
    light: { strength: () => 0.18 },
    sensor: { exposureMs: 33, readNoise: 3, shotNoise: 4, moments: 8 },
  },
  "shadow edge, light from one side, hand": {
    handFrom: 60,
    light: { slopeX: 0.25, slopeY: 0.1, shadow: { x: 10, y: 10, side: 30, soft: 10, depth: 0.6 } },
  },
  "lens -0.15, off center 2 mm, hand": {
    handFrom: 180,
    camera: { tilt: 15, k1: -0.15, focal: 230 },
    disc: { offCenter: { x: 2, y: 0 }, seat: { x: -1, y: 1.5 } },
  },
  "cone 4 mm, tilt 30": { camera: { tilt: 30, tiltFrom: 200 }, disc: { cone: 4, height: 12 }, handFrom: 300 },
  "curled disc and sheet, tilt 25": {
    camera: { tilt: 25 },
    disc: { curl: { rise: 2, direction: 30 }, height: 12 },
    baseCurl: { rise: 2.5, direction: 70 },
    handFrom: 300,
  },
  "rolling shutter 20 ms, hand": { handFrom: 300, sensor: { readoutMs: 20 } },
  "camera shaken": {
    handFrom: 300,
    camera: {
      shake: (at) => ({
        x: 0.8 * Math.sin(at / 90),
        y: 0.6 * Math.sin(at / 130),
        z: 0,
        pitch: 0.003 * Math.sin(at / 70),
        yaw: 0.002 * Math.cos(at / 110),
        roll: 0.004 * Math.sin(at / 150),
      }),
    },
  },
  "5 turns/s, exposure 16 ms": {
    handFrom: 300,
    sensor: { exposureMs: 16, moments: 8 },
    legs: [
      { by: 600, speed: 500, restMs: 300 },
      { by: -500, speed: 500, restMs: 300 },
    ],
  },
  "one frame in five dropped": { handFrom: 300, dropped: 0.2 },
};
