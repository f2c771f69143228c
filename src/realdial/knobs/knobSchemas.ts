import * as z from "zod/mini";
import { filled, number, oneOf, whole, within } from "../../lock/fieldSchemas";
import type { AxisKnob } from "./axisKnob";
import type { KeyKnob } from "./keyKnob";
import { ENCODINGS, type MidiKnob } from "./midiKnob";
import type { StickKnob } from "./stickKnob";

/** A number of this size at least, and at most 1e6, either way. */
const ofSize = (least: number) => number.check(z.refine((one) => Math.abs(one) >= least && Math.abs(one) <= 1e6));

/** A learned MIDI knob, as it was stored. */
export const midiKnobSchema = z.object({
  channel: whole(0, 15),
  controller: whole(0, 127),
  encoding: oneOf(ENCODINGS),
  perTurn: ofSize(1),
}) satisfies z.ZodMiniType<MidiKnob>;

/** A learned knob of keys, as it was stored. */
export const keyKnobSchema = z.object({
  left: filled,
  right: filled,
  perTurn: within(1, 1e6, "steps"),
}) satisfies z.ZodMiniType<KeyKnob>;

const axis = whole(0, 100);
const step = within(0, 1, "turns").check(z.gt(0));

const axisKnobSchema = z.object({ axis, perTurn: ofSize(0.01), step }) satisfies z.ZodMiniType<AxisKnob>;

const stickKnobSchema = z.object({
  axis,
  other: axis,
  perTurn: z.union([z.literal(1), z.literal(-1)]),
  step,
}) satisfies z.ZodMiniType<StickKnob>;

/** A learned axis or stick, as it was stored. */
export const controllerKnobSchema = z.union([stickKnobSchema, axisKnobSchema]);
