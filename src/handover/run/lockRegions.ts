import type { Profile } from "../../lock/profile";
import { ifGiven, when } from "./chartGuards";
import { all } from "./condition";
import { CAN_CHANGE, SHOWS } from "./conditions";
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
