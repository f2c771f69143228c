import * as z from "zod/mini";
import { flag, oneOf, shortList, strict, within } from "../lock/fieldSchemas";
import { CELL_TYPES } from "./batteries";
import { LUBRICANTS, SECTIONS } from "./papers";
import { LUBRICATED_PLACES } from "./servicedLock";
import { CHANGE_TYPES, INSTRUMENTS, LOOK_PLACES, QUESTIONS } from "./visitAct";
import { CONDITIONS } from "./wrongThing";

const plain = oneOf([
  ...CHANGE_TYPES.filter((one) => one !== "screw.tightened" && one !== "lubricated" && one !== "batteries.replaced"),
  "record.read",
  "door.opened",
  "door.held",
  "door.shut",
  "strap.worn",
  "cover.taken",
  "cover.put",
  "tried",
]);

/** What is written down at the end of a visit. */
export const visitRecordSchema = strict({
  found: shortList(oneOf(CONDITIONS), CONDITIONS.length),
  hasFigures: flag,
  hasChanges: flag,
  hasProofs: flag,
  hasCombination: flag,
});

/** An act of a visit, as a stored text has it. */
export const visitActSchema = z.union([
  strict({ type: plain }),
  strict({ type: z.literal("asked"), question: oneOf(QUESTIONS) }),
  strict({ type: z.literal("section.read"), section: oneOf(SECTIONS) }),
  strict({ type: z.literal("looked"), at: oneOf(LOOK_PLACES) }),
  strict({ type: z.literal("measured"), with: oneOf(INSTRUMENTS) }),
  strict({ type: z.literal("screw.tightened"), torque_Nm: within(0, 10, "newton meters") }),
  strict({ type: z.literal("lubricated"), at: oneOf(LUBRICATED_PLACES), with: oneOf(LUBRICANTS) }),
  strict({ type: z.literal("batteries.replaced"), which: oneOf(["set", "one"]), cells: oneOf(CELL_TYPES) }),
  strict({ type: z.literal("record.written"), record: visitRecordSchema }),
]);
