import { assign, setup } from "xstate";
import type { FitCheck } from "../fitCheck";
import type { FitFault } from "../fitFaultCode";

/** What the chart takes in: a check; an answer, of no faults where nothing is said to be wrong; another lock. */
export type InspectionEvent =
  | { readonly type: "check.made"; readonly check: FitCheck }
  | { readonly type: "faults.named"; readonly faults: readonly FitFault[] }
  | { readonly type: "inspection.restarted" };

/** What the chart remembers. */
export interface InspectionContext {
  /** Checks made, in order. */
  readonly checks: readonly FitCheck[];
  /** The answer; null before. */
  readonly named: readonly FitFault[] | null;
}

/** Where the trainee is. */
export type InspectionState = "checking" | "named";

const NOTHING: InspectionContext = { checks: [], named: null };

/** Finding what is wrong with a fit: checks in any order, then the answer, which stays. */
export const inspectionMachine = setup({
  types: { context: {} as InspectionContext, events: {} as InspectionEvent },
  actions: {
    check: assign(({ context }, check: FitCheck) => ({ checks: [...new Set([...context.checks, check])] })),
    name: assign((_, named: readonly FitFault[]) => ({ named })),
    forget: assign(NOTHING),
  },
}).createMachine({
  id: "inspection",
  context: NOTHING,
  initial: "checking",
  on: { "inspection.restarted": { target: ".checking", actions: "forget" } },
  states: {
    checking: {
      on: {
        "check.made": { actions: { type: "check", params: ({ event }) => event.check } },
        "faults.named": { target: "named", actions: { type: "name", params: ({ event }) => event.faults } },
      },
    },
    named: {},
  },
});
