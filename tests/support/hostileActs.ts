import fc from "fast-check";
import type { FittingAct } from "../../src/fitting/fittingAct";
import { fittingActSchema } from "../../src/fitting/fittingActSchema";
import type { VisitAct } from "../../src/service/visitAct";
import { visitActSchema } from "../../src/service/visitActSchema";
import { CONDITIONS } from "../../src/service/wrongThing";

/** Numbers that a hand never gives, and some that it does. */
const number = fc.oneof(
  fc.constantFrom(0, -0, 1e308, -1e308, 5e-324, 1e6, -1e6, 1000, -1000, 0.1, 2 ** 53),
  fc.double({ min: -1e3, max: 1e3, noNaN: true }),
  fc.integer({ min: -500, max: 2500 }),
);
const offset = fc.record({ x_mm: number, y_mm: number });
const of = <Type extends FittingAct["type"]>(type: Type) => fc.constant(type);
const BARE = [
  ...["ring.tightened", "ring.loosened", "ring.taken", "spindle.dressed", "spindle.replaced", "body.hung"],
  ...["body.tightened", "body.taken", "dial.taken", "key.put", "key.driven", "key.taken", "strike.tightened"],
  ...["strike.loosened", "cover.put", "cover.taken", "strap.put", "strap.taken"],
];
const TOUCHES = ["cable.plugged", "cable.pulled", "battery.disconnected", "fuse.replaced", "board.replaced"];
const luck = fc.oneof(fc.constantFrom(0, 1, -0), fc.double({ min: 0, max: 1, noNaN: true }));

/** Acts on parts as a text from outside may hold them, read by their schema: any size that it lets through. */
export const hostileFittingAct: fc.Arbitrary<FittingAct> = fc
  .oneof(
    { weight: 6, arbitrary: fc.record({ type: fc.constantFrom(...BARE) }) },
    fc.record({ type: fc.constantFrom(...TOUCHES), luck }),
    fc.record({ type: of("battery.connected"), leads: fc.constantFrom("right", "reversed"), luck }),
    fc.record({ type: of("ring.put"), offset, turned: number }),
    fc.record({ type: of("ring.turned"), by: number }),
    fc.record({ type: of("spindle.cut"), length_mm: number }),
    fc.record({ type: of("washers.put"), washers: fc.array(fc.constantFrom("flat", "spring"), { maxLength: 10 }) }),
    fc.record({ type: of("dial.screwed"), by: number }),
    fc.record({ type: of("key.screwed"), torque_Nm: number }),
    fc.record({ type: of("locker.dropped"), at: fc.constantFrom("key-screw", "spindle-thread", "wheels") }),
    fc.record({ type: of("strike.hung"), above_mm: number }),
    fc.record({ type: of("strike.moved"), by_mm: number }),
  )
  .map((act) => fittingActSchema.safeParse(act).data)
  .filter((act) => act !== undefined);

const acts = (type: string, field: string, ...values: readonly unknown[]) =>
  fc.constantFrom(...values).map((value) => ({ type, [field]: value }));

/** Acts of a visit, read by their schema, in no order. */
export const hostileVisitAct: fc.Arbitrary<VisitAct> = fc
  .oneof(
    fc
      .constantFrom("door.opened", "door.opened", "door.held", "cover.taken", "cover.put", "tried", "door.shut")
      .map((type) => ({ type })),
    fc
      .constantFrom("key.replaced", "bearing.replaced", "ring.cleaned", "paint.removed", "bolt.wiped", "strap.worn")
      .map((type) => ({ type })),
    acts("asked", "question", "trouble", "work-nearby"),
    acts("section.read", "section", "safety", "limits", "lubrication", "batteries", "record"),
    acts("looked", "at", "ring", "bolt", "way-out", "case"),
    acts("measured", "with", "turn-round", "lost-motion", "marks", "key", "battery"),
    number.map((torque_Nm) => ({ type: "screw.tightened", torque_Nm })),
    fc.record({
      type: fc.constant("lubricated"),
      at: fc.constantFrom("bearing", "wheels", "bolt"),
      with: fc.constantFrom("grease", "oil"),
    }),
    fc.record({
      type: fc.constant("batteries.replaced"),
      which: fc.constantFrom("set", "one"),
      cells: fc.constantFrom("alkaline", "lithium"),
    }),
    fc.record({
      type: fc.constant("record.written"),
      record: fc.record({
        found: fc.uniqueArray(fc.constantFrom(...CONDITIONS)),
        hasFigures: fc.boolean(),
        hasChanges: fc.boolean(),
        hasProofs: fc.boolean(),
        hasCombination: fc.boolean(),
      }),
    }),
  )
  .map((act) => visitActSchema.safeParse(act).data)
  .filter((act) => act !== undefined);

/** Every number in a value that is not finite, by its path. */
export function unfinite(value: unknown, path = ""): readonly string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [`${path}: ${value}`];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, one]) => unfinite(one, `${path}.${key}`));
}
