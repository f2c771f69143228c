import { assign, setup } from "xstate";
import { SERVICE } from "./serviceValues";
import type { VisitHindrance } from "./visitAct";

/** What the chart takes in: what was done to door and lock, each try of the combination, and the end. */
export type VisitEvent =
  | { readonly type: "door.opened" }
  | { readonly type: "door.shut" }
  /** A part was changed, or the cover moved. */
  | { readonly type: "lock.disturbed" }
  | { readonly type: "try.made"; readonly opened: boolean }
  | { readonly type: "act.stopped"; readonly by: VisitHindrance }
  /** Something was asked, read, looked at, measured or written. */
  | { readonly type: "act.done" }
  | { readonly type: "visit.ended" }
  | { readonly type: "visit.restarted" };

/** Where a visit can end. */
type VisitPlace = "shut" | "open" | "disturbed" | "proved" | "shutUnproved";
/** Where the technician is: before a shut door, at an open one as found, disturbed or proved, before a shut one that is not proved, or gone. */
export type VisitPhase = VisitPlace | "left";

/** What the chart remembers. */
export interface VisitContext {
  /** Whether the combination was tried before anything was disturbed. */
  readonly triedBefore: boolean;
  readonly isDisturbed: boolean;
  /** Openings in a row at the open door since the lock was last disturbed, at most as many as prove it. */
  readonly openings: number;
  /** Whether the door was ever shut on a lock that was not proved. */
  readonly shutUnproved: boolean;
  /** What stood in the way of the last act, or null. */
  readonly stopped: VisitHindrance | null;
  /** Where the visit ended; null before. */
  readonly endedAt: VisitPlace | null;
}

const NOTHING: VisitContext = {
  triedBefore: false,
  isDisturbed: false,
  openings: 0,
  shutUnproved: false,
  stopped: null,
  endedAt: null,
};

/** What every place takes while the visit lasts. */
const ALWAYS = { "act.stopped": { actions: "stop" }, "act.done": { actions: "goOn" } } as const;

const endAt = (place: VisitPlace) =>
  ({ "visit.ended": { target: "left", actions: { type: "end", params: place } } }) as const;

/**
 * A service visit: the door opened, the lock disturbed, proved again by openings in a row, the door shut.
 *
 * Whatever disturbs the lock makes the proofs before it worthless, and so does a try that does not open.
 */
export const visitMachine = setup({
  types: { context: {} as VisitContext, events: {} as VisitEvent },
  guards: {
    isLastProof: ({ context, event }) =>
      event.type === "try.made" && event.opened && context.openings >= SERVICE.proofs - 1,
    isRefused: ({ event }) => event.type === "try.made" && !event.opened,
  },
  actions: {
    stop: assign(({ event }) => (event.type === "act.stopped" ? { stopped: event.by } : {})),
    goOn: assign({ stopped: null }),
    disturb: assign({ isDisturbed: true, openings: 0, stopped: null }),
    // Through a shut door, a try proves nothing but what the lock was before.
    tryShut: assign(({ context }) => ({ triedBefore: context.triedBefore || !context.isDisturbed, stopped: null })),
    tryOpen: assign(({ context, event }) => ({
      triedBefore: context.triedBefore || !context.isDisturbed,
      openings: event.type === "try.made" && event.opened ? Math.min(SERVICE.proofs, context.openings + 1) : 0,
      stopped: null,
    })),
    shutUnproved: assign({ shutUnproved: true, stopped: null }),
    end: assign((_, endedAt: VisitPlace) => ({ endedAt, stopped: null })),
    forget: assign(NOTHING),
  },
}).createMachine({
  id: "visit",
  context: NOTHING,
  initial: "shut",
  on: { "visit.restarted": { target: ".shut", actions: "forget" } },
  states: {
    shut: {
      on: {
        ...ALWAYS,
        ...endAt("shut"),
        "door.opened": { target: "open", actions: "goOn" },
        "lock.disturbed": { target: "shutUnproved", actions: ["disturb", "shutUnproved"] },
        "try.made": { actions: "tryShut" },
      },
    },
    open: {
      on: {
        ...ALWAYS,
        ...endAt("open"),
        "door.shut": { target: "shut", actions: "goOn" },
        "lock.disturbed": { target: "disturbed", actions: "disturb" },
        "try.made": { actions: "tryOpen" },
      },
    },
    disturbed: {
      on: {
        ...ALWAYS,
        ...endAt("disturbed"),
        "door.shut": { target: "shutUnproved", actions: "shutUnproved" },
        "lock.disturbed": { actions: "disturb" },
        "try.made": [{ guard: "isLastProof", target: "proved", actions: "tryOpen" }, { actions: "tryOpen" }],
      },
    },
    proved: {
      on: {
        ...ALWAYS,
        ...endAt("proved"),
        "door.shut": { target: "shut", actions: "goOn" },
        "lock.disturbed": { target: "disturbed", actions: "disturb" },
        "try.made": [{ guard: "isRefused", target: "disturbed", actions: "tryOpen" }, { actions: "tryOpen" }],
      },
    },
    shutUnproved: {
      on: {
        ...ALWAYS,
        ...endAt("shutUnproved"),
        "door.opened": { target: "disturbed", actions: "goOn" },
        "lock.disturbed": { actions: "disturb" },
        "try.made": { actions: "tryShut" },
      },
    },
    left: {},
  },
});
