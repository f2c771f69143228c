import { assign, setup } from "xstate";
import { PROOFS_WANTED } from "../../drill/marking/jobRule";
import type { PackChangeFact } from "./changeFact";

/** What the chart of a change with a key takes in: facts of the engine, and the wish to begin again. */
export type PackChangeEvent = PackChangeFact | { readonly type: "change.restarted" };

/** What the chart remembers. */
export interface ChangeContext {
  /** Openings with the new combination since it was set, counted up to those wanted. */
  readonly proofs: number;
  /** Whether the key has been turned and turned back. */
  readonly hasChanged: boolean;
}

/** What the operator of a change with a key is doing. */
export type PackChangeState =
  | "dialingPresent"
  | "presentStands"
  | "keyIn"
  | "keyForced"
  | "dialingNew"
  | "newStands"
  | "keyBack"
  | "proving"
  | "proofRefused"
  | "proved"
  | "spoiled"
  | "doorShut";

const START: ChangeContext = { proofs: 0, hasChanged: false };

const machine = setup({
  types: { context: {} as ChangeContext, events: {} as PackChangeEvent },
  guards: {
    hasChanged: ({ context }) => context.hasChanged,
    isLastProof: ({ context }) => context.proofs + 1 >= PROOFS_WANTED,
  },
  actions: {
    startOver: assign(START),
    change: assign({ hasChanged: true, proofs: 0 }),
    forgetProofs: assign({ proofs: 0 }),
    countProof: assign({ proofs: ({ context }) => Math.min(PROOFS_WANTED, context.proofs + 1) }),
  },
});

const shut = { "door.shut": "doorShut" } as const;
/** While the new combination is tried. */
const trying = {
  ...shut,
  // A key is put in from here as well, but the hand leaves the proofs first.
  "change.again": { target: "dialingPresent", actions: "forgetProofs" },
  "proof.opened": [
    { guard: "isLastProof", target: "proved", actions: "countProof" },
    { target: "proving", actions: "countProof" },
  ],
  "proof.refused": { target: "proofRefused", actions: "forgetProofs" },
} as const;

/**
 * A change with a key as a chart: what may happen next, whoever has dial and key.
 *
 * It keeps no angle: the engine (`PackChange`) sends it finished facts. Nothing stops a wrong order but its consequence.
 */
export const packChangeMachine = machine.createMachine({
  id: "packChange",
  context: START,
  initial: "dialingPresent",
  on: { "change.restarted": { target: ".dialingPresent", actions: "startOver" } },
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
    proving: { on: trying },
    // One opening after a refusal is never the last that is wanted.
    proofRefused: { on: { ...trying, "proof.opened": { target: "proving", actions: "countProof" } } },
    proved: { on: { ...trying, "proof.opened": "proved" } },
    spoiled: { on: shut },
    doorShut: {},
  },
});
