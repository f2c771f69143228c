import { assign, setup } from "xstate";
import type { FitCheck } from "./fitCheck";
import type { FitStage } from "./fitStage";
import type { Hindrance } from "./fittingAct";

/**
 * What the chart takes in: an act that was done, with what the lock came to; one that could not be; a check; the word
 * that it is ready. A part that is moved names the checks that it makes worthless, where it is not every one.
 */
export type FittingEvent =
  | { readonly type: "part.moved"; readonly stage: FitStage; readonly voids?: readonly FitCheck[] }
  | { readonly type: "part.stopped"; readonly by: Hindrance }
  | { readonly type: "check.made"; readonly check: FitCheck }
  | { readonly type: "fit.declared" }
  | { readonly type: "fit.reopened" }
  | { readonly type: "fitting.restarted" };

/** What the chart remembers. */
export interface FittingContext {
  /** Parts moved. */
  readonly acts: number;
  /** Checks made since a part was last moved, in order. */
  readonly checks: readonly FitCheck[];
  /** What stood in the way of the last act, or null. */
  readonly stopped: Hindrance | null;
  /** How far it was together when it was said to be ready; null before. */
  readonly declared: FitStage | null;
}

/** Where the trainee is: how far the lock is together, or the debrief. */
export type FittingState = FitStage | "declared";

const NOTHING: FittingContext = { acts: 0, checks: [], stopped: null, declared: null };

/** What every state but the debrief takes: what is moved while that is read does not count. */
const MOVES = {
  "part.moved": [
    { guard: { type: "isStage", params: "apart" }, target: "apart", actions: "move" },
    { guard: { type: "isStage", params: "coupled" }, target: "coupled", actions: "move" },
    { guard: { type: "isStage", params: "closed" }, target: "closed", actions: "move" },
    { guard: { type: "isStage", params: "spent" }, target: "spent", actions: "move" },
  ],
  "part.stopped": { actions: "stop" },
} as const;

/**
 * A dial that is fitted: apart, coupled, closed, or spoiled beyond what the tray can mend; then the word that it is ready,
 * and the debrief.
 *
 * A part that is moved makes the checks before it worthless that could now show something else. The word can be taken back, and the work goes on where it was.
 */
export const fittingMachine = setup({
  types: { context: {} as FittingContext, events: {} as FittingEvent },
  guards: {
    isStage: ({ event }, stage: FitStage) => event.type === "part.moved" && event.stage === stage,
    was: ({ context }, stage: FitStage) => context.declared === stage,
  },
  actions: {
    move: assign(({ context, event }) => {
      const voids = event.type === "part.moved" ? event.voids : undefined;
      const checks = voids === undefined ? [] : context.checks.filter((check) => !voids.includes(check));
      return { acts: context.acts + 1, checks, stopped: null };
    }),
    stop: assign(({ event }) => (event.type === "part.stopped" ? { stopped: event.by } : {})),
    check: assign(({ context }, check: FitCheck) => ({
      checks: [...new Set([...context.checks, check])],
      stopped: null,
    })),
    declare: assign((_, declared: FitStage) => ({ declared, stopped: null })),
    reopen: assign({ declared: null }),
    forget: assign(NOTHING),
  },
}).createMachine({
  id: "fitting",
  context: NOTHING,
  initial: "apart",
  on: { "fitting.restarted": { target: ".apart", actions: "forget" } },
  states: {
    apart: { on: MOVES },
    coupled: {
      on: {
        ...MOVES,
        "check.made": { actions: { type: "check", params: ({ event }) => event.check } },
        "fit.declared": { target: "declared", actions: { type: "declare", params: "coupled" } },
      },
    },
    closed: {
      on: {
        ...MOVES,
        "check.made": { actions: { type: "check", params: ({ event }) => event.check } },
        "fit.declared": { target: "declared", actions: { type: "declare", params: "closed" } },
      },
    },
    spent: { on: { ...MOVES, "fit.declared": { target: "declared", actions: { type: "declare", params: "spent" } } } },
    declared: {
      on: {
        "fit.reopened": [
          { guard: { type: "was", params: "coupled" }, target: "coupled", actions: "reopen" },
          { guard: { type: "was", params: "closed" }, target: "closed", actions: "reopen" },
        ],
      },
    },
  },
});
