import type { Profile } from "../../../lock/profile";
import { all } from "../rules/condition";
import { CAN_CHANGE, IS_ON_DOOR, SHOWS } from "../rules/conditions";
import { EVENT_TYPES, type HandoverEvent } from "../rules/handoverEvent";
import { type ChartGuard, ifGiven, ifUnhindered, when } from "./chartGuards";
import { takenApart } from "./fitRegions";
import { handover } from "./handoverSetup";

/** The dial ring. */
export const ring = handover.createStateConfig({
  initial: "loose",
  states: {
    loose: { on: { "ring.aligned": { guard: when(IS_ON_DOOR), target: "aligned" } } },
    aligned: { on: { "ring.loosened": "loose", ...takenApart("loose") } },
  },
});

/** What was set holds no more once the ring is another, or the lock is. */
const lost = { "ring.loosened": "notSet", ...takenApart("notSet") } as const;

const countsAsZero = all("ring.aligned", "door.open");
const zeroed = (side: "right" | "left", target: string) => ({ guard: ifGiven({ side }, countsAsZero), target });

/** The zero. A wheel pack learns none: its index stands true when the ring does. */
export const zeroOf = (kind: Profile["kind"]) =>
  handover.createStateConfig({
    initial: kind === "wheel-pack" ? "byRing" : "notSet",
    states: {
      notSet: { on: { "zero.set": [zeroed("right", "rightSet"), zeroed("left", "leftSet")] } },
      rightSet: { on: { "zero.set": zeroed("left", "bothSet"), ...lost } },
      leftSet: { on: { "zero.set": zeroed("right", "bothSet"), ...lost } },
      bothSet: { on: lost },
      byRing: {},
    },
  });

/** A pack is built again where it is spoiled and can be reached. */
const rebuilt = <Target extends string>(target: Target) =>
  ({ guard: when(all(IS_ON_DOOR, "door.open", "combination.spoiled")), target }) as const;

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
  { guard: ifGiven({ outcome: "true" }, CAN_CHANGE), target: "ownTrue" },
  { guard: ifGiven({ outcome: "off" }, CAN_CHANGE), target: "ownOff" },
  { guard: ifGiven({ outcome: "spoiled" }, CAN_CHANGE), target: "spoiled" },
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

/** After these there is no lock to try: the signature ends the chart, and a lock in parts opens to nothing. */
const NOT_TRIED_AFTER: readonly HandoverEvent["type"][] = ["duty.signed", "lock.takenApart"];
const TRIED_AFTER = (Object.keys(EVENT_TYPES) as HandoverEvent["type"][]).filter(
  (type) => !NOT_TRIED_AFTER.includes(type),
);

const tells =
  (opens: boolean): ChartGuard =>
  ({ event }) =>
    ("opensAsWritten" in event ? event.opensAsWritten : undefined) === opens;

/** What the lock itself says of the numbers as written. An event that does not tell changes nothing. */
export const asWritten = handover.createStateConfig({
  initial: "unknown",
  on: {
    ...takenApart(".unknown"),
    ...Object.fromEntries(
      TRIED_AFTER.map((type) => [
        type,
        [
          { guard: ifUnhindered(type, tells(true)), target: ".opens" },
          { guard: ifUnhindered(type, tells(false)), target: ".useless" },
        ],
      ]),
    ),
  },
  states: { unknown: {}, opens: {}, useless: {} },
});
