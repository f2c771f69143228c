import { assign, setup } from "xstate";
import type { Assembly } from "./assembly";
import type { FitCheck } from "./fitCheck";
import type { LockToFit } from "./fittedLock";
import type { Hindrance } from "./fittingAct";

/** What the chart takes in: an act that was done, with what the lock came to; one that could not be; a check; the word that it is ready. */
export type FittingEvent =
  | { readonly type: "part.moved"; readonly stage: FitStage }
  | { readonly type: "part.stopped"; readonly by: Hindrance }
  | { readonly type: "check.made"; readonly check: FitCheck }
  | { readonly type: "fit.declared" }
  | { readonly type: "fit.reopened" }
  | { readonly type: "fitting.restarted" };

/** How far a lock is put together, and whether it can still become a good one. */
export type FitStage = "apart" | "coupled" | "closed" | "spent";

/** Shortest spindle that still reaches the cam with the dial close to its ring, millimeters. */
const leastLength = ({ sizes }: LockToFit): number =>
  sizes.gapLeast_mm + sizes.ring_mm + sizes.door_mm + sizes.plate_mm + sizes.body_mm + sizes.outLeast_mm;

/** Whether nothing in the tray makes a good lock of this any more. */
const isSpent = ({ spindle, spares, locker, key }: Assembly, lock: LockToFit): boolean =>
  locker.includes("wheels") ||
  key?.screw === "stripped" ||
  (spindle.length_mm < leastLength(lock) && (spares === 0 || locker.includes("spindle-thread")));

/** Names the state of a lock on the door. */
export function stageOf(assembly: Assembly, lock: LockToFit): FitStage {
  if (isSpent(assembly, lock)) return "spent";
  const { ring, body, dialIn, key, hasCover } = assembly;
  if (ring === null || body === null || dialIn === null || key === null) return "apart";
  return hasCover ? "closed" : "coupled";
}

/** What the chart remembers. */
export interface FittingContext {
  readonly acts: number;
  /** Checks made since a part was last moved. */
  readonly checks: readonly FitCheck[];
  /** What stood in the way of the last act, or null. */
  readonly stopped: Hindrance | null;
}

const NOTHING: FittingContext = { acts: 0, checks: [], stopped: null };

/**
 * A dial that is fitted: parts in the tray, coupled, closed, or spoiled beyond what the tray can mend; then the word that it
 * is ready, and the debrief.
 *
 * A part that is moved makes every check before it worthless. A word once given can be taken back as long as the debrief is
 * not read: that is the same state, left by going on.
 */
export const fittingMachine = setup({
  types: { context: {} as FittingContext, events: {} as FittingEvent },
  guards: {
    isStage: ({ event }, stage: FitStage) => event.type === "part.moved" && event.stage === stage,
  },
  actions: {
    move: assign(({ context }) => ({ acts: context.acts + 1, checks: [], stopped: null })),
    stop: assign(({ event }) => (event.type === "part.stopped" ? { stopped: event.by } : {})),
    check: assign(({ context, event }) =>
      event.type === "check.made" ? { checks: [...new Set([...context.checks, event.check])], stopped: null } : {},
    ),
    forget: assign(NOTHING),
  },
}).createMachine({
  id: "fitting",
  context: NOTHING,
  initial: "working",
  on: { "fitting.restarted": { target: ".working", actions: "forget" } },
  states: {
    working: {
      initial: "apart",
      on: {
        "part.moved": [
          { guard: { type: "isStage", params: "apart" }, target: ".apart", actions: "move" },
          { guard: { type: "isStage", params: "coupled" }, target: ".coupled", actions: "move" },
          { guard: { type: "isStage", params: "closed" }, target: ".closed", actions: "move" },
          { guard: { type: "isStage", params: "spent" }, target: ".spent", actions: "move" },
        ],
        "part.stopped": { actions: "stop" },
      },
      states: {
        apart: {},
        coupled: { on: { "check.made": { actions: "check" }, "fit.declared": "#fitting.declared" } },
        closed: { on: { "check.made": { actions: "check" }, "fit.declared": "#fitting.declared" } },
        spent: { on: { "fit.declared": "#fitting.declared" } },
        back: { type: "history" },
      },
    },
    declared: { on: { "fit.reopened": "working.back" } },
  },
});
