import { assign, setup } from "xstate";
import { PROOFS_WANTED } from "../../drill/marking/jobRule";
import type { EncoderChangeFact } from "./changeFact";

/** What the chart of a change on the dial takes in: facts of the engine, and the wish to begin again. */
export type EncoderChangeEvent = EncoderChangeFact | { readonly type: "change.restarted" };

/** What the operator of a change on the dial of an encoder lock is doing. */
export type EncoderChangeState =
  | "dialingPresent"
  | "presentRefused"
  | "presentOpen"
  | "firstEntry"
  | "secondEntry"
  | "entriesDiffer"
  | "proving"
  | "proofRefused"
  | "proved"
  | "doorShut";

const START = { proofs: 0 };

const machine = setup({
  types: { context: {} as { readonly proofs: number }, events: {} as EncoderChangeEvent },
  guards: { isLastProof: ({ context }) => context.proofs + 1 >= PROOFS_WANTED },
  actions: {
    startOver: assign(START),
    forgetProofs: assign({ proofs: 0 }),
    countProof: assign({ proofs: ({ context }) => Math.min(PROOFS_WANTED, context.proofs + 1) }),
  },
});

const shut = { "door.shut": "doorShut" } as const;
const opening = { "present.opened": "presentOpen", "present.refused": "presentRefused", ...shut } as const;
const trying = {
  ...shut,
  "proof.opened": [
    { guard: "isLastProof", target: "proved", actions: "countProof" },
    { target: "proving", actions: "countProof" },
  ],
  "proof.refused": { target: "proofRefused", actions: "forgetProofs" },
} as const;

/**
 * A change on the dial of an encoder lock as a chart: what may happen next, whoever turns the dial.
 *
 * It keeps no angle: the engine (`EncoderChange`) sends it finished facts. A dialing that the lock cannot take leaves it
 * waiting for the same one.
 */
export const encoderChangeMachine = machine.createMachine({
  id: "encoderChange",
  context: START,
  initial: "dialingPresent",
  on: { "change.restarted": { target: ".dialingPresent", actions: "startOver" } },
  states: {
    dialingPresent: { on: opening },
    presentRefused: { on: opening },
    presentOpen: { on: { "present.closed": "dialingPresent", "button.pressed": "firstEntry", ...shut } },
    firstEntry: { on: { "entry.taken": "secondEntry", "entry.refused": "firstEntry", ...shut } },
    secondEntry: {
      on: {
        "entries.agreed": "proving",
        "entries.differed": "entriesDiffer",
        "entry.refused": "secondEntry",
        ...shut,
      },
    },
    entriesDiffer: { on: { "entry.taken": "secondEntry", "entry.refused": "entriesDiffer", ...shut } },
    proving: { on: trying },
    // One opening after a refusal is never the last that is wanted.
    proofRefused: { on: { ...trying, "proof.opened": { target: "proving", actions: "countProof" } } },
    proved: { on: { ...trying, "proof.opened": "proved" } },
    doorShut: {},
  },
});
