import { describe, expect, test } from "vitest";
import { createActor } from "xstate";
import {
  HOLDBACK_TASKS,
  type HoldbackContext,
  type HoldbackEvent,
  type HoldbackTask,
  type HoldbackTold,
  holdbackMachine,
  nextTask,
} from "../../../src/handover/holdback/holdbackMachine";
import { holdToPlain, walkedChart } from "../../support/walkedChart";

/** How the lock stands. */
type HoldbackState = "standing" | "held" | "released" | "spunOff";

const chart = holdbackMachine(100);
const EVENTS: readonly HoldbackEvent[] = [
  { type: "holdback.set" },
  { type: "holdback.released" },
  { type: "holdback.refused", why: "bolt-not-back" },
  { type: "dial.held", by: 45 },
  { type: "lock.cleared" },
  { type: "door.pulled", isLocked: true },
  { type: "door.pulled", isLocked: false },
];

const walked = walkedChart(chart, EVENTS);

const pulled = (isHeld: boolean, isLocked: boolean): HoldbackTold =>
  isHeld ? "pulled" : isLocked ? "door-stays" : "door-opens";

/** What an event came to, in plain words and with no chart; null for nothing. */
function cameTo(value: HoldbackState, event: HoldbackEvent, swallowed: number): HoldbackTold | null {
  const isHeld = value === "held";
  switch (event.type) {
    case "holdback.refused":
      return event.why;
    case "holdback.set":
      return "set";
    case "dial.held":
      return isHeld ? (swallowed >= 90 ? "held" : "blocked") : null;
    case "door.pulled":
      return pulled(isHeld, event.isLocked);
    case "holdback.released":
      return isHeld ? "released" : null;
    default:
      return value === "released" ? "spunOff" : null;
  }
}

const AFTER: Partial<Record<HoldbackTold, HoldbackState>> = { set: "held", released: "released", spunOff: "spunOff" };
const isTask = (told: HoldbackTold): told is HoldbackTask => HOLDBACK_TASKS.some((task) => task === told);

function plain(events: readonly HoldbackEvent[]): { value: HoldbackState; context: HoldbackContext } {
  let value: HoldbackState = "standing";
  let swallowed = 0;
  let told: HoldbackTold | null = null;
  const done = new Set<HoldbackTask>();
  for (const event of events) {
    if (event.type === "dial.held" && value === "held") swallowed = Math.min(90, swallowed + event.by);
    const came = cameTo(value, event, swallowed);
    if (came === null) continue;
    told = came;
    value = AFTER[came] ?? value;
    if (isTask(came)) done.add(came);
  }
  return { value, context: { done: [...done], swallowed, told } };
}

describe("the chart of a holdback", () => {
  test("is walked through every state and every arrow", () => {
    process.stdout.write(
      `holdback: ${walked.states.length} states, ${walked.places} with memory, ${walked.arrows} arrows\n`,
    );
    expect(walked.states).toEqual(["held", "released", "spunOff", "standing"]);
    expect([walked.untaken, walked.unused]).toEqual([[], []]);
    expect(walked.places).toBeGreaterThan(100);
  });

  test("comes on every path to what the plain description says", () => {
    holdToPlain(chart, walked.paths, plain);
  });

  test("asks for its tasks in order, and for nothing once all are done", () => {
    const actor = createActor(chart).start();
    const asked = [nextTask(actor.getSnapshot().context)];
    const way: readonly HoldbackEvent[] = [
      { type: "holdback.set" },
      { type: "dial.held", by: 95 },
      { type: "door.pulled", isLocked: false },
      { type: "holdback.released" },
      { type: "lock.cleared" },
    ];
    for (const event of way) {
      actor.send(event);
      asked.push(nextTask(actor.getSnapshot().context));
    }
    expect(asked).toEqual([...HOLDBACK_TASKS, null]);
  });
});
