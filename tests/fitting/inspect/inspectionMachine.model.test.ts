import { describe, expect, test } from "vitest";
import {
  type InspectionContext,
  type InspectionEvent,
  type InspectionState,
  inspectionMachine,
} from "../../../src/fitting/inspect/inspectionMachine";
import { holdToPlain, walkedChart } from "../../support/walkedChart";

const EVENTS: readonly InspectionEvent[] = [
  { type: "check.made", check: "depth" },
  { type: "check.made", check: "zero" },
  { type: "faults.named", faults: [] },
  { type: "faults.named", faults: ["rubs", "end-play"] },
  { type: "inspection.restarted" },
];

const walked = walkedChart(inspectionMachine, EVENTS);

interface Plain {
  readonly value: InspectionState;
  readonly context: InspectionContext;
}

const FRESH: Plain = { value: "checking", context: { checks: [], named: null } };

/** What one event comes to, in plain words and with no chart. */
function then(now: Plain, event: InspectionEvent): Plain {
  if (event.type === "inspection.restarted") return FRESH;
  if (now.value === "named") return now;
  if (event.type === "faults.named") return { value: "named", context: { ...now.context, named: event.faults } };
  const { checks } = now.context;
  return checks.includes(event.check) ? now : { ...now, context: { ...now.context, checks: [...checks, event.check] } };
}

describe("the chart of finding what is wrong with a fit", () => {
  test("is walked through every state and every arrow", () => {
    process.stdout.write(
      `inspection: ${walked.states.length} states, ${walked.places} with memory, ${walked.arrows} arrows\n`,
    );
    expect(walked.states).toEqual(["checking", "named"]);
    expect([walked.untaken, walked.unused]).toEqual([[], []]);
  });

  test("does what its plain description does, on every path", () => {
    holdToPlain(inspectionMachine, walked.paths, (events) => events.reduce(then, FRESH));
  });
});
