import { changeSetup, type ProvingState, provingStates, shut, UNCHANGED } from "./provingChart";

/** What the operator of a change with a key is doing. */
export type PackChangeState =
  | "dialingPresent"
  | "presentStands"
  | "keyIn"
  | "keyForced"
  | "dialingNew"
  | "newStands"
  | "keyBack"
  | "spoiled"
  | ProvingState;

/**
 * A change with a key as a chart: what may happen next, whoever has dial and key.
 *
 * It keeps no angle: the lock under it (`PackChange`) sends it finished facts, and goes by it from there on. Nothing stops
 * a wrong order but its consequence.
 */
export const packChangeMachine = changeSetup.createMachine({
  id: "packChange",
  context: UNCHANGED,
  initial: "dialingPresent",
  states: {
    dialingPresent: { on: { "present.stands": "presentStands", "key.inserted": "keyForced", ...shut } },
    presentStands: { on: { "present.left": "dialingPresent", "key.inserted": "keyIn", ...shut } },
    keyIn: {
      on: {
        "key.turned": "dialingNew",
        "key.withdrawn": [{ guard: "hasChanged", target: "proving" }, { target: "presentStands" }],
      },
    },
    keyForced: {
      on: {
        "pack.spoiled": "spoiled",
        "key.withdrawn": [{ guard: "hasChanged", target: "proving" }, { target: "dialingPresent" }],
      },
    },
    dialingNew: {
      on: { "new.stands": "newStands", "key.turnedBack": { target: "keyBack", actions: "change" } },
    },
    newStands: {
      on: { "new.left": "dialingNew", "key.turnedBack": { target: "keyBack", actions: "change" } },
    },
    keyBack: { on: { "key.turned": "dialingNew", "key.withdrawn": "proving" } },
    spoiled: { on: shut },
    // A key is put in while proving as well, but the hand leaves the proofs first.
    ...provingStates({ "change.again": { target: "dialingPresent", actions: "forgetProofs" } as const }),
  },
});
