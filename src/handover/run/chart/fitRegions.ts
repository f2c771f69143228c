import { all } from "../rules/condition";
import { CAN_TAKE_APART } from "../rules/conditions";
import { ifGiven, when } from "./chartGuards";
import { handover } from "./handoverSetup";

/** A fitted lock is taken apart. */
export const takenApart = <Target extends string>(target: Target) =>
  ({ "lock.takenApart": { guard: when(CAN_TAKE_APART), target } }) as const;

/** How the lock is fitted. @param isToFit - whether its parts are in the tray as the run begins */
export const fitOfDoor = (isToFit: boolean) =>
  handover.createStateConfig({
    initial: isToFit ? "apart" : "asFound",
    states: {
      asFound: {},
      apart: {
        on: {
          "lock.fitted": [
            { guard: ifGiven({ isFaultless: true }, all()), target: "faultless" },
            { guard: ifGiven({ isFaultless: false }, all()), target: "faulty" },
          ],
        },
      },
      faultless: { on: takenApart("apart") },
      faulty: { on: takenApart("apart") },
    },
  });

/** Whether its fit was checked. */
export const fitChecks = handover.createStateConfig({
  initial: "unmade",
  states: {
    unmade: { on: { "lock.fitted": { guard: ifGiven({ isChecked: true }, "fit.apart"), target: "made" } } },
    made: { on: takenApart("unmade") },
  },
});
