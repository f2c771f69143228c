import { createTestModel } from "@xstate/test";
import { describe, expect, test } from "vitest";
import { createActor, type SnapshotFrom } from "xstate";
import { opposite, signOf } from "../../src/lock/dial";
import { REFUSALS } from "../../src/zeroing/approach";
import { type ZeroingEvent, type ZeroReading, zeroingMachine } from "../../src/zeroing/zeroingMachine";
import { usualRules, type ZeroingRules } from "../../src/zeroing/zeroingRules";
import { arrowsLeft } from "../support/drawnArrows";
import { EXACT, EXACT_INDEX_ERROR, ZeroBench } from "../support/zeroBench";

type Machine = ReturnType<typeof zeroingMachine>;
type Snapshot = SnapshotFrom<Machine>;

// Two readings where three are usual: with the same arrows, a tenth of the paths.
const RULES: ZeroingRules = { ...usualRules(100), wanted: 2, most: 3 };
const CASES = [
  { name: "the usual rules", rules: RULES, states: 46, arrows: 349 },
  { name: "readings in a row", rules: { ...RULES, consecutive: true }, states: 46, arrows: 349 },
  { name: "the left side first", rules: { ...RULES, order: ["left", "right"] as const }, states: 46, arrows: 349 },
];

/** Two stops that lie too far apart to agree. */
const STOPS = [0.25, -0.75];

const readingAt = (deviation: number, turn: "left" | "right"): ZeroReading => ({
  deviation,
  cam: deviation + EXACT_INDEX_ERROR + (signOf(turn) < 0 ? EXACT.lostMotion : 0),
});

const sideOf = ({ value }: Snapshot, { order }: ZeroingRules) => order[value === "secondSeries" ? 1 : 0];

const hasBeenRead = ({ accepted, refused }: Snapshot["context"]) =>
  accepted.right.length + accepted.left.length + refused.right + refused.left > 0;

/** What the chart takes in a state; a stop can only be read again where one has been read. */
const takenIn =
  (rules: ZeroingRules) =>
  (state: Snapshot): ZeroingEvent[] => {
    const all: ZeroingEvent[] = [
      { type: "ring.clamped" },
      { type: "ring.loosened" },
      ...STOPS.map((at): ZeroingEvent => ({ type: "reading.accepted", reading: readingAt(at, sideOf(state, rules)) })),
      ...REFUSALS.map((reason): ZeroingEvent => ({ type: "reading.refused", reason, deviation: 0 })),
      { type: "series.restarted" },
      { type: "series.reopened", side: "right" },
      { type: "series.reopened", side: "left" },
      { type: "zeroing.restarted" },
    ];
    return all.filter(
      (event) =>
        state.can(event) &&
        (event.type !== "reading.refused" || event.reason !== "same-stop" || hasBeenRead(state.context)),
    );
  };

/**
 * What of a state bears on the series under way: how many readings, the last of them, and how many are wanted. Of a
 * series that is behind or ahead, only whether it has room: with all that is remembered there are a thousand paths more.
 */
const keyOf = (rules: ZeroingRules) => (state: Snapshot) => {
  const { accepted, wanted } = state.context;
  const side = sideOf(state, rules);
  const rest = accepted[opposite(side)].length >= rules.most;
  return JSON.stringify([
    state.value,
    accepted[side].length,
    accepted[side].at(-1)?.deviation,
    wanted[side],
    rest,
    hasBeenRead(state.context),
  ]);
};

describe.each(CASES)("the zeroing chart, $name", ({ name, rules, states, arrows }) => {
  const machine = zeroingMachine(rules);
  const key = keyOf(rules);
  // A state is told apart by the arrow that led to it, too: else the paths reach every state and not every arrow.
  const walk = {
    serializeState: (state: unknown, event: unknown, from: unknown) =>
      `${key(state as Snapshot)} by ${JSON.stringify(event)} from ${from ? key(from as Snapshot) : "nowhere"}` as never,
  };
  // The options of a walk replace those of the model.
  const paths = createTestModel(machine, walk).getShortestPaths({
    ...walk,
    events: (state) => takenIn(rules)(state as Snapshot),
  });
  const steps = paths.flatMap((path) =>
    path.steps.slice(1).map(({ event }, i) => ({
      from: (path.steps[i] ?? path).state as Snapshot,
      event: event as ZeroingEvent,
    })),
  );

  const arrowOf = (from: Snapshot, event: ZeroingEvent) => `${key(from)} by ${JSON.stringify(event)}`;
  const inPaths = new Set(steps.map(({ from, event }) => arrowOf(from, event)));
  const remembered = new Map(steps.map(({ from }) => [key(from), from]));

  test("its paths reach every state", () => {
    const reached = new Set(
      paths.flatMap((path) => [path.state, ...path.steps.map(({ state }) => state)]).map(({ value }) => value),
    );
    process.stdout.write(
      `zeroing chart, ${name}: ${reached.size} of ${Object.keys(machine.states).length} states ` +
        `(${remembered.size} with memory), ${inPaths.size} transitions, ${paths.length} paths\n`,
    );
    expect([...reached].sort()).toEqual(Object.keys(machine.states).sort());
    expect([remembered.size, inPaths.size]).toEqual([states, arrows]);
  });

  test("its paths take every arrow that is drawn, and every one from every state", () => {
    expect(arrowsLeft(machine, steps)).toEqual([]);
    const all = [...remembered.values()].flatMap((from) => takenIn(rules)(from).map((event) => arrowOf(from, event)));
    expect(all.filter((arrow) => !inPaths.has(arrow))).toEqual([]);
  });

  test("every path is one that a hand can make on a real lock", { timeout: 30_000 }, async () => {
    for (const path of paths) {
      const bench = new ZeroBench(rules);
      const told = createActor(machine).start();
      // The step's event carries its payload, but is typed by its name alone.
      const make = (step: { readonly event: object }) => {
        bench.make(step.event as ZeroingEvent);
        told.send(step.event as ZeroingEvent);
      };
      await path.test({
        events: Object.fromEntries(steps.map(({ event }) => [event.type, make])),
        states: {
          "*": (state) => {
            const { value, context } = told.getSnapshot();
            // The path tells no deviation of a stop that is refused: the hand has one.
            const last = context.last && { ...context.last, deviation: bench.state.context.last?.deviation };
            expect(bench.state).toEqual({ value, context: { ...context, last } });
            expect(key(told.getSnapshot())).toBe(key(state as Snapshot));
          },
        },
      });
    }
  });
});
