import * as z from "zod/mini";
import { list, number, oneOf, share, within } from "../lock/fieldSchemas";
import type { FitCheck } from "./fitCheck";
import { FIT_CHECKS } from "./fitChecks";
import type { FittingAct } from "./fittingAct";

/** No part goes farther than this across the door, millimeters, or graduations. */
const FAR = 1000;
const mm = within(-FAR, FAR, "millimeters");
const graduations = within(-1e6, 1e6, "graduations");

/** A way off the middle, from outside. */
export const offsetSchema = z.object({ x_mm: mm, y_mm: mm });

/** Chance of a touch, from outside. */
const luck = share(0, 1);
const touch = <const Type extends FittingAct["type"]>(type: Type) => z.object({ type: z.literal(type), luck });

const bare = <const Type extends FittingAct["type"]>(type: Type) => z.object({ type: z.literal(type) });

/** An act of a fitting, from outside. */
export const fittingActSchema = z.discriminatedUnion("type", [
  z.object({ type: z.literal("ring.put"), offset: offsetSchema, turned: graduations }),
  z.object({ type: z.literal("ring.turned"), by: graduations }),
  bare("ring.tightened"),
  bare("ring.loosened"),
  bare("ring.taken"),
  bare("spindle.marked"),
  z.object({ type: z.literal("spindle.cut"), length_mm: mm }),
  bare("spindle.dressed"),
  bare("spindle.replaced"),
  z.object({ type: z.literal("washers.put"), washers: list(oneOf(["flat", "spring"]), 0, 10) }),
  bare("body.hung"),
  bare("body.tightened"),
  bare("body.taken"),
  z.object({ type: z.literal("dial.screwed"), by: graduations }),
  bare("dial.taken"),
  bare("key.put"),
  bare("key.driven"),
  z.object({ type: z.literal("key.screwed"), torque_Nm: number }),
  bare("key.taken"),
  z.object({ type: z.literal("locker.dropped"), at: oneOf(["key-screw", "spindle-thread", "wheels"]) }),
  z.object({ type: z.literal("strike.hung"), above_mm: mm }),
  z.object({ type: z.literal("strike.moved"), by_mm: mm }),
  bare("strike.tightened"),
  bare("strike.loosened"),
  bare("cover.put"),
  bare("cover.taken"),
  bare("strap.put"),
  bare("strap.taken"),
  touch("cable.plugged"),
  touch("cable.pulled"),
  z.object({ type: z.literal("battery.connected"), leads: oneOf(["right", "reversed"]), luck }),
  touch("battery.disconnected"),
  touch("fuse.replaced"),
  touch("board.replaced"),
]) satisfies z.ZodMiniType<FittingAct>;

/** A check of a fitting, from outside. */
export const fitCheckSchema = oneOf(FIT_CHECKS) satisfies z.ZodMiniType<FitCheck>;
