import { changeSetup, type ProvingState, provingStates, shut, UNCHANGED } from "./provingChart";

/** What the operator of a change on the dial of an encoder lock is doing. */
export type EncoderChangeState =
  | "dialingPresent"
  | "presentRefused"
  | "presentOpen"
  | "firstEntry"
  | "secondEntry"
  | "entriesDiffer"
  | ProvingState;

const opening = { "present.opened": "presentOpen", "present.refused": "presentRefused", ...shut } as const;

/**
 * A change on the dial of an encoder lock as a chart: what may happen next, whoever turns the dial.
 *
 * It keeps no angle: the lock under it (`EncoderChange`) sends it finished facts, and goes by it from there on. A dialing
 * that the lock cannot take leaves it waiting for the same one.
 */
export const encoderChangeMachine = changeSetup.createMachine({
  id: "encoderChange",
  context: UNCHANGED,
  initial: "dialingPresent",
  states: {
    dialingPresent: { on: opening },
    presentRefused: { on: opening },
    presentOpen: { on: { "present.closed": "dialingPresent", "button.pressed": "firstEntry", ...shut } },
    firstEntry: { on: { "entry.taken": "secondEntry", "entry.refused": "firstEntry", ...shut } },
    secondEntry: {
      on: {
        "entries.agreed": { target: "proving", actions: "change" },
        "entries.differed": "entriesDiffer",
        "entry.refused": "secondEntry",
        ...shut,
      },
    },
    entriesDiffer: { on: { "entry.taken": "secondEntry", "entry.refused": "entriesDiffer", ...shut } },
    ...provingStates({}),
  },
});
