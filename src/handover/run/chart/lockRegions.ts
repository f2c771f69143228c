import type { Profile } from "../../../lock/profile";
import { all } from "../rules/condition";
import { CAN_CHANGE, SHOWS } from "../rules/conditions";
import { EVENT_TYPES, type HandoverEvent } from "../rules/handoverEvent";
import { type ChartGuard, ifGiven, ifUnhindered, when } from "./chartGuards";
import { handover } from "./handoverSetup";

/** The dial ring. */
export const ring = handover.createStateConfig({
  initial: "loose",
  states: { loose: { on: { "ring.aligned": "aligned" } }, aligned: { on: { "ring.loosened": "loose" } } },
});

const countsAsZero = all("ring.aligned", "door.open");
const zeroed = (side: "right" | "left", target: string) => ({ guard: ifGiven({ side }, countsAsZero), target });

/** The zero. A wheel pack learns none: its index stands true when the ring does. */
export const zeroOf = (kind: Profile["kind"]) =>
  handover.createStateConfig({
    initial: kind === "wheel-pack" ? "byRing" : "notSet",
    states: {
      notSet: { on: { "zero.set": [zeroed("right", "rightSet"), zeroed("left", "leftSet")] } },
      rightSet: { on: { "zero.set": zeroed("left", "bothSet"), "ring.loosened": "notSet" } },
      leftSet: { on: { "zero.set": zeroed("right", "bothSet"), "ring.loosened": "notSet" } },
      bothSet: { on: { "ring.loosened": "notSet" } },
      byRing: {},
    },
  });

/** A pack is built again where it is spoiled and can be reached. */
const rebuilt = <Target extends string>(target: Target) =>
  ({ guard: when(all("door.open", "combination.spoiled")), target }) as const;

/** Whether the lock has been opened as it came. */
export const shippedTry = handover.createStateConfig({
  initial: "untried",
  states: {
    untried: {
      on: {
        "combination.dialed": {
          guard: ifGiven({ opened: true }, all(SHOWS, "combination.shipped")),
          target: "tried",
        },
      },
    },
    tried: { on: { "pack.rebuilt": rebuilt("untried") } },
  },
});

const changedTo = [
  { guard: ifGiven({ outcome: "true" }, "door.open"), target: "ownTrue" },
  { guard: ifGiven({ outcome: "off" }, "door.open"), target: "ownOff" },
  { guard: ifGiven({ outcome: "spoiled" }, "door.open"), target: "spoiled" },
] as const;

/** What is in the lock. */
export const combination = handover.createStateConfig({
  initial: "shipped",
  states: {
    shipped: { on: { "combination.changed": changedTo } },
    ownTrue: { on: { "combination.changed": changedTo } },
    ownOff: { on: { "combination.changed": changedTo } },
    spoiled: { on: { "pack.rebuilt": rebuilt("shipped") } },
  },
});

const chosen = [
  { guard: ifGiven({ isAllowed: true }, CAN_CHANGE), target: "kept" },
  { guard: ifGiven({ isAllowed: false }, CAN_CHANGE), target: "broken" },
] as const;

/** Whether the rules of the lock allow what was chosen. */
export const rules = handover.createStateConfig({
  initial: "notChosen",
  states: {
    notChosen: { on: { "combination.changed": chosen } },
    kept: { on: { "combination.changed": chosen, "pack.rebuilt": rebuilt("notChosen") } },
    broken: { on: { "combination.changed": chosen, "pack.rebuilt": rebuilt("notChosen") } },
  },
});

/** Events after which a lock can be tried: all but the signature, which moves no lock and ends the chart. */
const TRIED_AFTER = (Object.keys(EVENT_TYPES) as HandoverEvent["type"][]).filter((type) => type !== "duty.signed");

const tells =
  (opens: boolean): ChartGuard =>
  ({ event }) =>
    ("opensAsWritten" in event ? event.opensAsWritten : undefined) === opens;

/** What the lock itself says of the numbers as written. An event that does not tell changes nothing. */
export const asWritten = handover.createStateConfig({
  initial: "unknown",
  on: Object.fromEntries(
    TRIED_AFTER.map((type) => [
      type,
      [
        { guard: ifUnhindered(type, tells(true)), target: ".opens" },
        { guard: ifUnhindered(type, tells(false)), target: ".useless" },
      ],
    ]),
  ),
  states: { unknown: {}, opens: {}, useless: {} },
});
