import { createTestModel } from "@xstate/test";
import { initialTransition, type SnapshotFrom, transition } from "xstate";
import { REFUSALS } from "../../../src/zeroing/approach";
import { type ZeroingEvent, type ZeroReading, zeroingMachine } from "../../../src/zeroing/zeroingMachine";
import type { ZeroingRules } from "../../../src/zeroing/zeroingRules";
import { fewest } from "./chartPaths";

type Snapshot = SnapshotFrom<ReturnType<typeof zeroingMachine>>;

/** What the chart remembers, where it is, and what was told it. */
export interface ZeroingStep {
  readonly event: ZeroingEvent;
  /** The arrow taken: a state, an event with its choice, and the state it leads to. */
  readonly arrow: string;
  readonly from: Snapshot;
  readonly to: Snapshot;
}

/** Stops in turn that lie close enough to agree, and too loosely to be shown to be good; and some far apart. */
const CLOSE = [0.3, -0.2];
const WIDE = [1.2, -1.2];

const readingAt = (deviation = 0): ZeroReading => ({ deviation, cam: deviation });

const count = ({ accepted }: Snapshot["context"]) => accepted.right.length + accepted.left.length;

/** What the chart takes in a state; a stop can only be read again where one has been read. */
function takenIn(state: Snapshot): ZeroingEvent[] {
  const { context } = state;
  const hasBeenRead = count(context) + context.refused.right + context.refused.left > 0;
  const all: ZeroingEvent[] = [
    { type: "ring.clamped" },
    { type: "ring.loosened" },
    ...[CLOSE, WIDE].map(
      (stops): ZeroingEvent => ({
        type: "reading.accepted",
        reading: readingAt(stops[count(context) % stops.length]),
      }),
    ),
    ...REFUSALS.filter((reason) => reason !== "same-stop" || hasBeenRead).map(
      (reason): ZeroingEvent => ({ type: "reading.refused", reason, deviation: 0 }),
    ),
    { type: "series.restarted" },
    { type: "series.reopened", side: "right" },
    { type: "series.reopened", side: "left" },
    { type: "zeroing.restarted" },
  ];
  return all.filter((event) => state.can(event));
}

function arrowText({ value }: Snapshot, event: ZeroingEvent, to: Snapshot): string {
  const choice =
    event.type === "reading.refused" ? ` ${event.reason}` : event.type === "series.reopened" ? ` ${event.side}` : "";
  return `${value} by ${event.type}${choice} to ${to.value}`;
}

/** How many readings, whether the last ones were wide, and whether anything has been read: what a next arrow needs. */
const keyOf = ({ value, context }: Snapshot) => {
  const wide = (readings: readonly ZeroReading[]) => readings.slice(-3).map(({ deviation }) => Math.abs(deviation) > 1);
  const { accepted, refused } = context;
  return JSON.stringify([
    value,
    accepted.right.length,
    accepted.left.length,
    wide(value === "secondSeries" ? accepted.left : accepted.right),
    refused.right + refused.left > 0 && count(context) === 0,
  ]);
};

const startOf = (machine: ReturnType<typeof zeroingMachine>) => initialTransition(machine)[0];

/** Few paths from the start that take every arrow of the chart, the ones that take most of them first. */
export function zeroingPaths(rules: ZeroingRules): readonly (readonly ZeroingStep[])[] {
  const machine = zeroingMachine(rules);
  // A state is told apart by the arrow that led to it, too: else the paths reach every state and not every arrow.
  const walk = {
    serializeState: (state: unknown, event: unknown, from: unknown) => {
      const by = from ? ` by ${arrowText(from as Snapshot, event as ZeroingEvent, state as Snapshot)}` : "";
      return `${keyOf(state as Snapshot)}${by}` as never;
    },
  };
  // The options of a walk replace those of the model.
  const found = createTestModel(machine, walk).getShortestPaths({
    ...walk,
    events: (state) => takenIn(state as Snapshot),
  });
  // A walk joins states that differ in what its key leaves out: what is remembered is told anew.
  const told = ({ steps }: (typeof found)[number]) => {
    let from = startOf(machine);
    return steps.slice(1).map(({ event }): ZeroingStep => {
      // The step's event carries its payload, but is typed by its name alone.
      const made = event as ZeroingEvent;
      const [to] = transition(machine, from, made);
      const step = { event: made, arrow: arrowText(from, made, to), from, to };
      from = to;
      return step;
    });
  };
  const paths = found.map(told);
  return fewest(paths);
}

/** Every arrow the chart has, found by walking it: an oracle for the paths. */
export function zeroingArrows(rules: ZeroingRules): ReadonlySet<string> {
  const machine = zeroingMachine(rules);
  const start = startOf(machine);
  const seen = new Map([[keyOf(start), start]]);
  const arrows = new Set<string>();
  for (const state of seen.values()) {
    for (const event of takenIn(state)) {
      const [next] = transition(machine, state, event);
      arrows.add(arrowText(state, event, next));
      if (!seen.has(keyOf(next))) seen.set(keyOf(next), next);
    }
  }
  return arrows;
}
