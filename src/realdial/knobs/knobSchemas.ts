import * as z from "zod/mini";
import { filled, number, oneOf, whole, within } from "../../lock/fieldSchemas";
import type { AxisKnob } from "./axisKnob";
import type { KeyKnob } from "./keyKnob";
import { ENCODINGS, type MidiKnob } from "./midiKnob";
import type { StickKnob } from "./stickKnob";

/** Steps, or parts of an axis, in one turn. */
const perTurn = number.check(z.refine((steps) => Math.abs(steps) >= 0.01 && Math.abs(steps) <= 1e6));

/** A learned MIDI knob, as it was stored. */
export const midiKnobSchema = z.object({
  channel: whole(0, 15),
  controller: whole(0, 127),
  encoding: oneOf(ENCODINGS),
  perTurn,
}) satisfies z.ZodMiniType<MidiKnob>;

/** A learned knob of keys, as it was stored. */
export const keyKnobSchema = z.object({ left: filled, right: filled, perTurn }) satisfies z.ZodMiniType<KeyKnob>;

const axis = whole(0, 100);
const step = within(0, 1, "turns");

const axisKnobSchema = z.object({ axis, perTurn, step }) satisfies z.ZodMiniType<AxisKnob>;

const stickKnobSchema = z.object({ axis, other: axis, perTurn, step }) satisfies z.ZodMiniType<StickKnob>;

/** A learned axis or stick, as it was stored. */
export const controllerKnobSchema = z.union([stickKnobSchema, axisKnobSchema]);
