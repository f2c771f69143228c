import { assign, setup } from "xstate";
import { PROOFS_WANTED } from "../../drill/marking/jobRule";
import type { ChangeFact } from "./changeFact";

/** What the chart of a change remembers. */
export interface ChangeContext {
  /** Openings in a row with the new combination, counted up to those wanted: a refusal begins the count again. */
  readonly proofs: number;
  /** Whether the lock has been set anew: the key turned and turned back, or both dialings taken. */
  readonly hasChanged: boolean;
}

/** Where the trying of a new combination is. */
export type ProvingState = "proving" | "proofRefused" | "proved" | "doorShut";

/** Nothing changed and nothing proved yet. */
export const UNCHANGED: ChangeContext = { proofs: 0, hasChanged: false };

/** What the charts of both kinds of change have in common. */
export const changeSetup = setup({
  types: { context: {} as ChangeContext, events: {} as ChangeFact },
  guards: {
    hasChanged: ({ context }) => context.hasChanged,
    isLastProof: ({ context }) => context.proofs + 1 >= PROOFS_WANTED,
  },
  actions: {
    change: assign({ hasChanged: true, proofs: 0 }),
    forgetProofs: assign({ proofs: 0 }),
    countProof: assign({ proofs: ({ context }) => Math.min(PROOFS_WANTED, context.proofs + 1) }),
  },
});

/** The door may be shut. */
export const shut = { "door.shut": "doorShut" } as const;

const trying = {
  ...shut,
  "proof.opened": [
    { guard: "isLastProof", target: "proved", actions: "countProof" },
    { target: "proving", actions: "countProof" },
  ],
  "proof.refused": { target: "proofRefused", actions: "forgetProofs" },
} as const;

/** The new combination tried, as often as one likes. @param on - what else may happen meanwhile */
export const provingStates = <On extends object>(on: On) =>
  ({
    proving: { on: { ...trying, ...on } },
    // One opening after a refusal is never the last that is wanted.
    proofRefused: { on: { ...trying, ...on, "proof.opened": { target: "proving", actions: "countProof" } } },
    proved: { on: { ...trying, ...on, "proof.opened": "proved" } },
    doorShut: {},
  }) as const;
