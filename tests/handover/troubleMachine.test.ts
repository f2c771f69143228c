import { createTestModel } from "@xstate/test";
import { expect, test } from "vitest";
import { createActor, type SnapshotFrom } from "xstate";
import type { Trouble } from "../../src/handover/trouble/trouble";
import { type TroubleContext, type TroubleEvent, troubleMachine } from "../../src/handover/trouble/troubleMachine";

type Snapshot = SnapshotFrom<typeof troubleMachine>;

const NAMED: Trouble = { kind: "dial-heavy", part: null, size: 2 };
const EVENTS: readonly TroubleEvent[] = [
  { type: "try.made" },
  { type: "measurement.made" },
  { type: "diagnosis.named", named: NAMED },
  { type: "diagnosis.withdrawn" },
  { type: "condition.told" },
  { type: "bench.restarted" },
];
/** More is only more of the same. */
const MOST = 2;

const takenIn = (state: Snapshot) =>
  EVENTS.filter(
    (event) =>
      state.can(event) &&
      (event.type !== "try.made" || state.context.tries < MOST) &&
      (event.type !== "measurement.made" || state.context.measurements < MOST),
  );
const key = ({ value, context }: Snapshot) => JSON.stringify([value, context]);

const walk = {
  serializeState: (state: unknown, event: unknown, from: unknown) =>
    `${key(state as Snapshot)} by ${JSON.stringify(event)} from ${from ? key(from as Snapshot) : "nowhere"}` as never,
};
const paths = createTestModel(troubleMachine, walk).getShortestPaths({
  ...walk,
  events: (state) => takenIn(state as Snapshot),
});
const steps = paths.flatMap((path) =>
  path.steps.slice(1).map(({ event }, i) => ({
    from: (path.steps[i] ?? path).state as Snapshot,
    event: event as TroubleEvent,
  })),
);

test("the paths reach every state and take every arrow from every one", () => {
  const reached = new Set(
    paths.flatMap((path) => [path.state, ...path.steps.map(({ state }) => state)]).map(({ value }) => value),
  );
  expect([...reached].sort()).toEqual(["measuring", "named", "told"]);
  const taken = new Set(steps.map(({ from, event }) => `${key(from)} ${event.type}`));
  const remembered = new Map(steps.map(({ from }) => [key(from), from]));
  const all = [...remembered.values()].flatMap((from) => takenIn(from).map(({ type }) => `${key(from)} ${type}`));
  expect(all.filter((arrow) => !taken.has(arrow))).toEqual([]);
  expect(remembered.size).toBe(27);
});

/** What is remembered, written once more without a chart. */
function expected(events: readonly TroubleEvent[]): TroubleContext {
  const sinceStart = events.slice(events.findLastIndex(({ type }) => type === "bench.restarted") + 1);
  const count = (wanted: TroubleEvent["type"]) => sinceStart.filter(({ type }) => type === wanted).length;
  const isNamed = count("diagnosis.named") > count("diagnosis.withdrawn");
  return { tries: count("try.made"), measurements: count("measurement.made"), named: isNamed ? NAMED : null };
}

test("every path remembers what was done on it", async () => {
  for (const path of paths) {
    const actor = createActor(troubleMachine).start();
    const made: TroubleEvent[] = [];
    const make = (step: { readonly event: object }) => {
      made.push(step.event as TroubleEvent);
      actor.send(step.event as TroubleEvent);
    };
    await path.test({
      events: Object.fromEntries(EVENTS.map(({ type }) => [type, make])),
      states: {
        "*": (state) => {
          expect(key(actor.getSnapshot())).toBe(key(state as Snapshot));
          expect(actor.getSnapshot().context).toEqual(expected(made));
        },
      },
    });
  }
});

test("nothing done after the condition was told counts, and it can be named only once", () => {
  const actor = createActor(troubleMachine).start();
  for (const type of ["try.made", "measurement.made"] as const) actor.send({ type });
  actor.send({ type: "diagnosis.named", named: NAMED });
  actor.send({ type: "condition.told" });
  for (const event of EVENTS.filter(({ type }) => type !== "bench.restarted")) actor.send(event);
  actor.send({ type: "diagnosis.named", named: { ...NAMED, size: 3 } });
  expect(actor.getSnapshot().value).toBe("told");
  expect(actor.getSnapshot().context).toEqual({ tries: 1, measurements: 1, named: NAMED });
});
