import { assign, setup } from "xstate";
import type { Trouble } from "./trouble";

/** What the chart takes in. */
export type TroubleEvent =
  | { readonly type: "try.made" }
  | { readonly type: "measurement.made" }
  | { readonly type: "diagnosis.named"; readonly named: Trouble }
  | { readonly type: "diagnosis.withdrawn" }
  | { readonly type: "condition.told" }
  | { readonly type: "bench.restarted" };

/** What the chart remembers. */
export interface TroubleContext {
  readonly tries: number;
  readonly measurements: number;
  /** The diagnosis that stands, or null. */
  readonly named: Trouble | null;
}

/** Where the trainee is. */
export type TroubleState = "measuring" | "named" | "told";

const NOTHING: TroubleContext = { tries: 0, measurements: 0, named: null };

/**
 * One lock on the trouble bench: looking, a diagnosis that stands, the condition told.
 *
 * A diagnosis can be withdrawn until the condition is told; after that the lock teaches nothing more, and nothing done to
 * it counts.
 */
export const troubleMachine = setup({
  types: { context: {} as TroubleContext, events: {} as TroubleEvent },
  actions: {
    countTry: assign({ tries: ({ context }) => context.tries + 1 }),
    countMeasurement: assign({ measurements: ({ context }) => context.measurements + 1 }),
    name: assign((_, named: Trouble) => ({ named })),
    withdraw: assign({ named: null }),
    forget: assign(NOTHING),
  },
}).createMachine({
  id: "trouble",
  context: NOTHING,
  initial: "measuring",
  on: { "bench.restarted": { target: ".measuring", actions: "forget" } },
  states: {
    measuring: {
      on: {
        "try.made": { actions: "countTry" },
        "measurement.made": { actions: "countMeasurement" },
        "diagnosis.named": {
          target: "named",
          actions: { type: "name", params: ({ event }) => event.named },
        },
      },
    },
    named: {
      on: {
        "diagnosis.withdrawn": { target: "measuring", actions: "withdraw" },
        "condition.told": "told",
      },
    },
    told: {},
  },
});
