import type { SnapshotFrom } from "xstate";
import type { DialingEvent, dialingMachine } from "../../src/dialing/dialingMachine";

/** A moment of the dialing chart. */
export type Snapshot = SnapshotFrom<ReturnType<typeof dialingMachine>>;

/** Every event of the dialing chart. */
export const EVENTS: readonly DialingEvent[] = [
  { type: "run.begun", turn: "left" },
  { type: "run.begun", turn: "right" },
  { type: "fresh.started" },
  { type: "number.reached" },
  { type: "number.passed" },
  { type: "turn.reversed" },
  { type: "turn.resumed", place: "before" },
  { type: "turn.resumed", place: "at" },
  { type: "turn.resumed", place: "past" },
  { type: "draw.refused" },
  { type: "bolt.retracted" },
  { type: "bolt.thrown" },
  { type: "lock.cleared" },
  { type: "pause.exceeded" },
  { type: "attempt.restarted" },
];

/** What the chart takes in a state; a hand resumes from where it left. */
export const takenIn = (state: Snapshot) =>
  EVENTS.filter((event) => state.can(event) && (event.type !== "turn.resumed" || event.place === state.context.leftAt));
