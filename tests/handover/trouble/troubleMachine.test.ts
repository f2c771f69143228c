import { expect, test } from "vitest";
import { createActor } from "xstate";
import type { Trouble } from "../../../src/handover/trouble/trouble";
import { type TroubleContext, type TroubleEvent, troubleMachine } from "../../../src/handover/trouble/troubleMachine";
import { holdToPlain, walkedChart } from "../../support/walkedChart";

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

const walked = walkedChart(troubleMachine, EVENTS, ({ type }, place) => {
  const { tries, measurements } = place.context as TroubleContext;
  return (type !== "try.made" || tries < MOST) && (type !== "measurement.made" || measurements < MOST);
});

test("the paths reach every state and take every arrow from every one", () => {
  expect(walked.states).toEqual(["measuring", "named", "told"]);
  expect(walked.untaken).toEqual([]);
  expect(walked.places).toBe(27);
});

/** What is remembered, written once more without a chart. */
function expected(events: readonly TroubleEvent[]): TroubleContext {
  const sinceStart = events.slice(events.findLastIndex(({ type }) => type === "bench.restarted") + 1);
  const count = (wanted: TroubleEvent["type"]) => sinceStart.filter(({ type }) => type === wanted).length;
  const isNamed = count("diagnosis.named") > count("diagnosis.withdrawn");
  return { tries: count("try.made"), measurements: count("measurement.made"), named: isNamed ? NAMED : null };
}

test("every path remembers what was done on it", () => {
  holdToPlain(troubleMachine, walked.paths, (events) => {
    const context = expected(events);
    const isTold = events
      .slice(events.findLastIndex(({ type }) => type === "bench.restarted") + 1)
      .some(({ type }) => type === "condition.told");
    return { value: isTold ? "told" : context.named === null ? "measuring" : "named", context };
  });
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
