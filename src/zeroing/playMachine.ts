import { assign, setup } from "xstate";
import type { Graduations, Turn } from "../lock/dial";
import type { LockTrain } from "../lock/train/lockTrain";
import type { PlayMark, PlayStops } from "./playEstimate";

/** Stops from each side before an answer can be marked. */
export const STOPS_WANTED = 2;

/** How near its line the cam's mark must be for a stop to be kept, graduations. */
const NEAR: Graduations = 0.35;

/** Why a stop is not kept. */
export type PlayProblem = "recorded-already" | "still-moving" | "cam-waits" | "off-the-line";

/** What the chart takes in: finished facts about dial and cam, and the answer marked. */
export type PlayEvent =
  | { readonly type: "dial.turned"; readonly turn: Turn }
  /** The hand says that it has stopped on the mark. `seen`: what the index reads, unwrapped graduations. */
  | { readonly type: "stop.asked"; readonly seen: Graduations; readonly problem: PlayProblem | null }
  | { readonly type: "answer.marked"; readonly mark: PlayMark }
  | { readonly type: "stops.restarted" };

/** What the chart remembers. */
export interface PlayContext {
  readonly stops: PlayStops;
  /** Direction of the last motion, or null. */
  readonly turn: Turn | null;
  /** Why the last stop was not kept, or null. */
  readonly problem: PlayProblem | null;
  readonly mark: PlayMark | null;
}

const START: PlayContext = { stops: { right: [], left: [] }, turn: null, problem: null, mark: null };

/** Whether there are stops enough to mark an answer. */
export const hasStopsEnough = ({ stops }: PlayContext): boolean =>
  stops.right.length >= STOPS_WANTED && stops.left.length >= STOPS_WANTED;

/** Find the play: stops on the cam's mark from each side, then an answer. A stop is kept once, and then left. */
export const playMachine = setup({
  types: { context: {} as PlayContext, events: {} as PlayEvent },
  guards: {
    isGood: ({ event }) => event.type === "stop.asked" && event.problem === null,
    hasStopsEnough: ({ context }) => hasStopsEnough(context),
  },
  actions: {
    turn: assign((_, turn: Turn) => ({ turn, problem: null })),
    keep: assign(({ context: { stops, turn } }, seen: Graduations) =>
      turn === null ? {} : { stops: { ...stops, [turn]: [...stops[turn], seen] }, problem: null },
    ),
    refuse: assign((_, problem: PlayProblem | null) => ({ problem })),
    mark: assign((_, mark: PlayMark) => ({ mark, problem: null })),
    startOver: assign(START),
  },
}).createMachine({
  id: "play",
  context: START,
  initial: "still",
  on: {
    "dial.turned": { target: ".turning", actions: { type: "turn", params: ({ event }) => event.turn } },
    "answer.marked": {
      guard: "hasStopsEnough",
      target: ".marked",
      actions: { type: "mark", params: ({ event }) => event.mark },
    },
    "stops.restarted": { target: ".still", actions: "startOver" },
  },
  states: {
    still: {},
    turning: {
      on: {
        "stop.asked": [
          { guard: "isGood", target: "kept", actions: { type: "keep", params: ({ event }) => event.seen } },
          { actions: { type: "refuse", params: ({ event }) => event.problem } },
        ],
      },
    },
    kept: { on: { "stop.asked": { actions: { type: "refuse", params: "recorded-already" } } } },
    // What is marked stays; the dial may be turned on.
    marked: { on: { "dial.turned": {}, "answer.marked": {} } },
  },
});

/** Why the place where the dial stands is no stop of a turn, or null. */
export function stopProblem(lock: LockTrain, turn: Turn): PlayProblem | null {
  if (lock.camTurn !== turn) return "cam-waits";
  return Math.abs(lock.camDeviation) > NEAR ? "off-the-line" : null;
}
