import { describe, expect, test } from "vitest";
import type { FitStage } from "../../src/fitting/fitStage";
import {
  type FittingContext,
  type FittingEvent,
  type FittingState,
  fittingMachine,
} from "../../src/fitting/fittingMachine";
import { holdToPlain, walkedChart } from "../support/walkedChart";

const STAGES: readonly FitStage[] = ["apart", "coupled", "closed", "spent"];
const EVENTS: readonly FittingEvent[] = [
  ...STAGES.map((stage) => ({ type: "part.moved", stage }) as const),
  { type: "part.moved", stage: "closed", voids: ["cover"] },
  { type: "part.stopped", by: "keyways-apart" },
  { type: "check.made", check: "depth" },
  { type: "check.made", check: "zero" },
  { type: "check.made", check: "cover" },
  { type: "fit.declared" },
  { type: "fit.reopened" },
  { type: "fitting.restarted" },
];
const MOST_ACTS = 3;

const walked = walkedChart(
  fittingMachine,
  EVENTS,
  (event, { context }) => event.type !== "part.moved" || (context as FittingContext).acts < MOST_ACTS,
);

interface Plain {
  readonly value: FittingState;
  readonly context: FittingContext;
}

const FRESH: Plain = { value: "apart", context: { acts: 0, checks: [], stopped: null, declared: null } };

type Told = (now: Plain, event: FittingEvent) => Plain;
const noteOf = (now: Plain, context: Partial<FittingContext>, value = now.value): Plain => ({
  value,
  context: { ...now.context, ...context },
});
const isTogether = ({ value }: Plain) => value === "coupled" || value === "closed";

/** What one event comes to while parts are moved, in plain words and with no chart. */
const WORKING: { readonly [Type in FittingEvent["type"]]?: Told } = {
  "part.moved": (now, event) => {
    if (event.type !== "part.moved") return now;
    const { voids } = event;
    const hold = voids === undefined ? [] : now.context.checks.filter((check) => !voids.includes(check));
    return noteOf(now, { acts: now.context.acts + 1, checks: hold, stopped: null }, event.stage);
  },
  "part.stopped": (now, event) => (event.type === "part.stopped" ? noteOf(now, { stopped: event.by }) : now),
  "check.made": (now, event) => {
    if (event.type !== "check.made" || !isTogether(now)) return now;
    const others = now.context.checks.filter((one) => one !== event.check);
    const checks = others.length < now.context.checks.length ? now.context.checks : [...others, event.check];
    return noteOf(now, { checks, stopped: null });
  },
  "fit.declared": (now) =>
    now.value === "apart" || now.value === "declared"
      ? now
      : noteOf(now, { declared: now.value, stopped: null }, "declared"),
};

/** What comes of the debrief: work goes on where it was, on a lock that can still become a good one. */
function afterDebrief(now: Plain, event: FittingEvent): Plain {
  const { declared } = now.context;
  const goesOn = event.type === "fit.reopened" && declared !== null && declared !== "spent";
  return goesOn ? noteOf(now, { declared: null }, declared) : now;
}

function then(now: Plain, event: FittingEvent): Plain {
  if (event.type === "fitting.restarted") return FRESH;
  if (now.value === "declared") return afterDebrief(now, event);
  return WORKING[event.type]?.(now, event) ?? now;
}

describe("the chart of a fitting", () => {
  test("is walked through every state and every arrow", () => {
    process.stdout.write(
      `fitting: ${walked.states.length} states, ${walked.places} with memory, ${walked.arrows} arrows\n`,
    );
    expect(walked.states).toEqual(["apart", "closed", "coupled", "declared", "spent"]);
    expect([walked.untaken, walked.unused]).toEqual([[], []]);
  });

  test("comes on every path to what the plain description says", () => {
    holdToPlain(fittingMachine, walked.paths, (events) => events.reduce(then, FRESH));
  });
});
