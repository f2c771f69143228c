import { all, not } from "../rules/condition";
import { IS_LATCHED, IS_LOCKED_OUT, IS_ON_DOOR, IS_SHUT_IN } from "../rules/conditions";
import { ifGiven, when } from "./chartGuards";
import { takenApart } from "./fitRegions";
import { handover } from "./handoverSetup";

/** The door. From outside it opens where the bolt is back; from inside by whoever can; else by force. */
export const door = handover.createStateConfig({
  initial: "open",
  states: {
    open: { on: { "door.shut": { guard: when(IS_ON_DOOR), target: "shut" } } },
    shut: {
      on: {
        "door.opened": [
          { guard: ifGiven({ by: "outside" }, "bolt.retracted"), target: "open" },
          { guard: ifGiven({ by: "inside" }, all("inside.able", not("wayOut.blocked"))), target: "open" },
          { guard: ifGiven({ by: "emergency" }, IS_LATCHED), target: "open" },
        ],
      },
    },
  },
});

const CAN_MOVE = all(IS_ON_DOOR, "holdback.off");

/** Dialing begins by throwing the bolt; what is held back does not move. */
const dialedBolt = [
  { guard: ifGiven({ opened: true }, all(CAN_MOVE, not("combination.spoiled"))), target: "retracted" },
  { guard: ifGiven({ opened: false }, CAN_MOVE), target: "thrown" },
] as const;
const drawsAgain = { guard: when(all(CAN_MOVE, not("combination.spoiled"))), target: "retracted" } as const;
const spinsOff = { guard: when(CAN_MOVE), target: "spunOff" } as const;

/** The bolt, and whether the wheels stand out of line behind it. */
export const bolt = handover.createStateConfig({
  initial: "thrown",
  states: {
    thrown: { on: { "combination.dialed": dialedBolt, "bolt.drawnAgain": drawsAgain, "lock.spunOff": spinsOff } },
    spunOff: { on: { "combination.dialed": dialedBolt, ...takenApart("thrown") } },
    retracted: {
      on: {
        "combination.dialed": dialedBolt,
        "bolt.thrown": { guard: when("holdback.off"), target: "thrown" },
        "lock.spunOff": spinsOff,
        ...takenApart("thrown"),
      },
    },
  },
});

/** The holdback: it holds a bolt that is drawn back. */
export const holdback = handover.createStateConfig({
  initial: "off",
  states: {
    off: { on: { "holdback.set": { guard: when(all("door.open", "bolt.retracted")), target: "on" } } },
    on: { on: { "holdback.released": { guard: when("door.open"), target: "off" } } },
  },
});

/** How far the holdback has been shown. */
export const shown = handover.createStateConfig({
  initial: "neither",
  states: {
    neither: { on: { "holdback.set": { guard: when(all("door.open", "bolt.retracted")), target: "set" } } },
    set: { on: { "holdback.released": { guard: when(all("door.open", "holdback.on")), target: "bothWays" } } },
    bothWays: {},
  },
});

/** Whether somebody is shut in; it notes so at once, whatever led to it. */
export const wayOutNeeded = handover.createStateConfig({
  initial: "free",
  states: {
    free: {
      always: { guard: when(IS_SHUT_IN), target: "shutIn", actions: { type: "note", params: "shut-in" } },
    },
    shutIn: { always: { guard: when(not(IS_SHUT_IN)), target: "free" } },
  },
});

/** Whether everybody is locked out; it notes so at once, whatever led to it. */
export const entry = handover.createStateConfig({
  initial: "free",
  states: {
    free: {
      always: { guard: when(IS_LOCKED_OUT), target: "lockedOut", actions: { type: "note", params: "locked-out" } },
    },
    lockedOut: { always: { guard: when(not(IS_LOCKED_OUT)), target: "free" } },
  },
});
