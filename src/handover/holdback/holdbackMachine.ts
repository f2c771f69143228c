import { assign, setup } from "xstate";
import type { DialingFact } from "../../dialing/dialingFact";
import type { Graduations } from "../../lock/dial";
import type { HoldbackFact, HoldbackRefusal } from "./heldLock";

/** What there is to be shown with a holdback, in order. */
export const HOLDBACK_TASKS = ["set", "held", "pulled", "released", "spunOff"] as const;
/** One of them. */
export type HoldbackTask = (typeof HOLDBACK_TASKS)[number];

/** What the chart takes in: what lock and slide did, and what the trainee did at the door. */
export type HoldbackEvent =
  | HoldbackFact
  | DialingFact
  /** The door was pushed shut and pulled at. */
  | { readonly type: "door.pulled"; readonly isLocked: boolean };

/** What came of the last act: a task done, or what the hand felt. */
export type HoldbackTold = HoldbackTask | HoldbackRefusal | "blocked" | "door-opens" | "door-stays";

/** What the chart remembers. */
export interface HoldbackContext {
  readonly done: readonly HoldbackTask[];
  /** Turning that the held dial has not let through, graduations; no more than shows that it cannot be spun off. */
  readonly swallowed: Graduations;
  readonly told: HoldbackTold | null;
}

/** Turning against the slide that shows it cannot be spun off, part of a turn: a whole one but for the play. */
const TRIED_AFTER = 0.9;

/**
 * A lock that stands open and its holdback, as a chart: what has been shown with them.
 *
 * Everything is shown on a held lock, so nothing is done before the slide has been set; the spinning off is shown on one
 * that was released.
 *
 * @param perTurn - graduations in one turn of the dial
 */
export function holdbackMachine(perTurn: number) {
  const enough = TRIED_AFTER * perTurn;
  return setup({
    types: { context: {} as HoldbackContext, events: {} as HoldbackEvent },
    guards: {
      isEnough: ({ context, event }) => event.type === "dial.held" && context.swallowed + event.by >= enough,
      isLocked: ({ event }) => event.type === "door.pulled" && event.isLocked,
    },
    actions: {
      note: assign(({ context }, task: HoldbackTask) => ({ done: [...new Set([...context.done, task])], told: task })),
      tell: assign((_, told: HoldbackTold) => ({ told })),
      swallow: assign(({ context, event }) => ({
        swallowed: event.type === "dial.held" ? Math.min(enough, context.swallowed + event.by) : context.swallowed,
      })),
    },
  }).createMachine({
    id: "holdback",
    context: { done: [], swallowed: 0, told: null },
    initial: "standing",
    on: {
      "holdback.refused": { actions: { type: "tell", params: ({ event }) => event.why } },
      "holdback.set": { target: ".held", actions: { type: "note", params: "set" } },
      "door.pulled": [
        { guard: "isLocked", actions: { type: "tell", params: "door-stays" } },
        { actions: { type: "tell", params: "door-opens" } },
      ],
    },
    states: {
      standing: {},
      held: {
        on: {
          "dial.held": [
            { guard: "isEnough", actions: ["swallow", { type: "note", params: "held" }] },
            { actions: ["swallow", { type: "tell", params: "blocked" }] },
          ],
          "door.pulled": { actions: { type: "note", params: "pulled" } },
          "holdback.released": { target: "released", actions: { type: "note", params: "released" } },
        },
      },
      released: { on: { "lock.cleared": { target: "spunOff", actions: { type: "note", params: "spunOff" } } } },
      spunOff: {},
    },
  });
}

/** The first thing still to be done, or null. */
export const nextTask = ({ done }: HoldbackContext): HoldbackTask | null =>
  HOLDBACK_TASKS.find((task) => !done.includes(task)) ?? null;
