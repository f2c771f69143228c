import { AT_REST } from "../motion/deadBand";
import { NOISIEST } from "../motion/restNoise";
import type { SourceDescription } from "./sourceDescription";
import type { SourceKind } from "./sourceKinds";

/** Graduations in a turn of the smallest dial and of the largest; a record does not say which it was. */
const DIALS = { smallest: 10, largest: 200 } as const;

/** A camera's pictures are read as finely whatever the dial, turns. */
const SIGHTED = [AT_REST / 100, AT_REST / 100] as const;
/** A knob that tells steps may have few or many in a turn, and is taken as it was learned, turns. */
const LEARNED = [1e-6, 100] as const;

/** Smallest and largest step that each kind of device can have, turns. */
const STEPS: Readonly<Record<Exclude<SourceKind, "screen">, readonly [number, number]>> = {
  "printed-dial": SIGHTED,
  "ordinary-dial": SIGHTED,
  encoder: [1e-6, 1 / 4],
  phone: [1 / 3600, 1 / 3600],
  midi: LEARNED,
  "knob-keys": LEARNED,
  gamepad: [0, 1],
};

/** Numbers of a record carry rounding. */
const ROUNDING = 1e-9;

/** Whether a device of its kind, not the screen, can have such a step on some dial. */
export function isStepPossible({ kind, resolution }: SourceDescription): boolean {
  if (kind === "screen") return true;
  const [least, most] = STEPS[kind];
  return resolution >= least * DIALS.smallest * (1 - ROUNDING) && resolution <= most * DIALS.largest * (1 + ROUNDING);
}

/**
 * Whether a device can have been as noisy at rest: its readings scatter within what counts as a rest, and it stands anywhere
 * within its step (`StepRest`).
 */
export function isNoisePossible({ noise, resolution }: SourceDescription): boolean {
  const scatter = (NOISIEST / 100) * DIALS.largest;
  return (noise ?? 0) <= Math.hypot(scatter, resolution / Math.sqrt(12)) * (1 + ROUNDING);
}
