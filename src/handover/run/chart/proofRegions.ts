import { all } from "../rules/condition";
import { CAN_CHANGE, READS_TRUE, SHOWS } from "../rules/conditions";
import { IS_READY_FOR_RECORD } from "../rules/proofs";
import { ifGiven, when } from "./chartGuards";
import { takenApart } from "./fitRegions";
import { handover } from "./handoverSetup";

/** What was shown of a lock holds no more once its combination, its index or its fit is another. */
const voided = <Target extends string>(target: Target) =>
  ({
    "combination.changed": { guard: when(CAN_CHANGE), target },
    "ring.loosened": target,
    ...takenApart(target),
  }) as const;

const proves = ifGiven({ by: "trainee", opened: true }, all(SHOWS, "combination.ownTrue"));
const fails = ifGiven({ by: "trainee", opened: false }, "door.open");
const proofStep = (next: string) => ({
  on: {
    ...voided("none"),
    "combination.dialed": [
      { guard: proves, target: next },
      { guard: fails, target: "none" },
    ],
  },
});

/** Openings of the own combination with the door open, in a row. */
export const proofs = handover.createStateConfig({
  initial: "none",
  states: {
    none: { on: { "combination.dialed": { guard: proves, target: "once" } } },
    once: proofStep("twice"),
    twice: proofStep("thrice"),
    thrice: { on: voided("none") },
  },
});

/** Whether a second person has opened it. */
export const second = handover.createStateConfig({
  initial: "unproved",
  states: {
    unproved: {
      on: {
        "combination.dialed": {
          guard: ifGiven({ by: "second", opened: true }, all(SHOWS, "combination.ownTrue", "proofs.thrice")),
          target: "proved",
        },
      },
    },
    proved: { on: voided("unproved") },
  },
});

/** Whether the door was shut with somebody inside who can open. */
export const observed = handover.createStateConfig({
  initial: "notYet",
  states: {
    notYet: {
      on: {
        "door.shut": {
          guard: when(all("inside.able", "wayOut.free", "holdback.off", "combination.ownTrue", "proofs.thrice")),
          target: "done",
        },
      },
    },
    done: { on: voided("notYet") },
  },
});

/** Whether it was proved from outside. */
export const outside = handover.createStateConfig({
  initial: "unproved",
  states: {
    unproved: {
      on: {
        "combination.dialed": {
          guard: ifGiven({ opened: true }, all("door.shut", "bolt.spunOff", "combination.ownTrue", READS_TRUE)),
          target: "proved",
        },
      },
    },
    proved: { on: voided("unproved") },
  },
});

/** The record: of the lock as it is now, or none. */
export const record = handover.createStateConfig({
  initial: "unwritten",
  states: {
    unwritten: { on: { "record.written": { guard: when(IS_READY_FOR_RECORD), target: "written" } } },
    written: { on: voided("unwritten") },
  },
});
