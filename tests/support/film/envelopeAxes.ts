import type { EdgeAxis } from "./edge";
import type { PrintedConditions } from "./printedFilm";

/** One thing about a film of a printed dial that grows worse while all others stay as they usually are. */
export interface EnvelopeAxis extends EdgeAxis {
  readonly film: (value: number) => PrintedConditions;
}

/** A hand on the knob, some tilt, two turns a second to the left and back. */
const USUAL: PrintedConditions = {
  camera: { tilt: 15 },
  handFrom: 300,
  sensor: { exposureMs: 5 },
  restMs: 170,
  legs: [
    { by: 70, speed: 200, restMs: 170 },
    { by: -120, speed: 200, restMs: 170 },
  ],
};

const camera = (values: PrintedConditions["camera"]): PrintedConditions => ({
  ...USUAL,
  camera: { ...USUAL.camera, ...values },
});
const sensor = (values: PrintedConditions["sensor"]): PrintedConditions => ({
  ...USUAL,
  sensor: { ...USUAL.sensor, ...values },
});
const disc = (values: NonNullable<PrintedConditions["disc"]>): PrintedConditions => ({ ...USUAL, disc: values });

export const ENVELOPE_AXES: readonly EnvelopeAxis[] = [
  { name: "tilt", unit: "degrees", good: 0, bad: 76, step: 1, film: (tilt) => camera({ tilt }) },
  {
    name: "light, 1 is full",
    unit: "",
    good: 0.5,
    bad: 0.01,
    step: 0.01,
    film: (strength) => ({ ...sensor({ readNoise: 3, shotNoise: 4 }), light: { strength: () => strength } }),
  },
  { name: "noise, SD", unit: "gray levels", good: 1, bad: 65, step: 2, film: (readNoise) => sensor({ readNoise }) },
  { name: "lens out of focus, SD", unit: "pixels", good: 0.4, bad: 5.2, step: 0.1, film: (blur) => sensor({ blur }) },
  {
    name: "exposure, at 2 turns/s",
    unit: "ms",
    good: 2,
    bad: 62,
    step: 2,
    film: (exposureMs) => sensor({ exposureMs, moments: 8 }),
  },
  {
    name: "sheet's side, of 240 pixels",
    unit: "pixels",
    good: 200,
    bad: 40,
    step: 5,
    film: (pixels) => ({ ...USUAL, fills: pixels / 240 }),
  },
  {
    name: "speed, at 30 frames/s",
    unit: "turns/s",
    good: 1,
    bad: 17,
    step: 0.5,
    film: (turns) => ({
      ...sensor({ exposureMs: 2 }),
      legs: [
        { by: 40 * turns, speed: 100 * turns, restMs: 170 },
        { by: -40 * turns, speed: 100 * turns, restMs: 170 },
      ],
    }),
  },
  {
    name: "frames, at 2 turns/s",
    unit: "frames/s",
    good: 30,
    bad: 2,
    step: 1,
    film: (framesPerSecond) => ({ ...USUAL, framesPerSecond }),
  },
  {
    name: "frames that never come",
    unit: "%",
    good: 0,
    bad: 90,
    step: 5,
    film: (percent) => ({ ...USUAL, dropped: percent / 100 }),
  },
  { name: "lens, barrel (k1)", unit: "", good: 0, bad: -0.8, step: 0.025, film: (k1) => camera({ k1 }) },
  { name: "lens, cushion (k1)", unit: "", good: 0, bad: 0.8, step: 0.025, film: (k1) => camera({ k1 }) },
  {
    name: "rolling shutter, first row to last",
    unit: "ms",
    good: 0,
    bad: 80,
    step: 5,
    film: (readoutMs) => sensor({ readoutMs }),
  },
  {
    name: "fingers on it, of 11 around",
    unit: "",
    good: 1,
    bad: 11,
    step: 1,
    film: (fingers) => ({ ...USUAL, fingers }),
  },
  { name: "disc off center", unit: "mm", good: 0, bad: 12, step: 0.5, film: (x) => disc({ offCenter: { x, y: 0 } }) },
  { name: "disc wobbles, tilt 15", unit: "degrees", good: 0, bad: 12, step: 0.5, film: (wobble) => disc({ wobble }) },
  { name: "disc above the sheet", unit: "mm", good: 3, bad: 75, step: 3, film: (height) => disc({ height }) },
];
