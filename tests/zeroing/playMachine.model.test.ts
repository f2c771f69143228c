import { describe, expect, test } from "vitest";
import type { PlayMark } from "../../src/zeroing/playEstimate";
import { type PlayContext, type PlayEvent, type PlayProblem, playMachine } from "../../src/zeroing/playMachine";
import { holdToPlain, walkedChart } from "../support/walkedChart";

const MARK: PlayMark = {
  estimate: 1,
  ci95: { low: 0.9, high: 1.1 },
  answer: 1,
  truth: 1,
  error: 0,
  isAnswerInside: true,
  isTruthInside: true,
};
const EVENTS: readonly PlayEvent[] = [
  { type: "dial.turned", turn: "right" },
  { type: "dial.turned", turn: "left" },
  { type: "stop.asked", seen: 7, problem: null },
  { type: "stop.asked", seen: 7, problem: "cam-waits" },
  { type: "stop.asked", seen: 7, problem: "off-the-line" },
  { type: "answer.marked", mark: MARK },
  { type: "stops.restarted" },
];
/** More stops of a side are only more of the same. */
const MOST = 2;

const walked = walkedChart(playMachine, EVENTS, (event, place) => {
  const { stops, turn } = place.context as PlayContext;
  return event.type !== "stop.asked" || event.problem !== null || turn === null || stops[turn].length < MOST;
});

/** What the trainee is doing: nothing yet, turning, standing on a stop that is kept, or done. */
type PlayState = "still" | "turning" | "kept" | "marked";

interface Place {
  readonly value: PlayState;
  readonly context: PlayContext;
}
const START: Place = {
  value: "still",
  context: { stops: { right: [], left: [] }, turn: null, problem: null, mark: null },
};

/** What a stop asked for comes to, in plain words and with no chart. */
function asked({ value, context }: Place, seen: number, problem: PlayProblem | null): Place {
  const { stops, turn } = context;
  if (value === "kept") return { value, context: { ...context, problem: "recorded-already" } };
  if (turn === null || problem !== null) return { value, context: turn === null ? context : { ...context, problem } };
  return { value: "kept", context: { ...context, stops: { ...stops, [turn]: [...stops[turn], seen] }, problem: null } };
}

/** What an event comes to, in plain words. */
function after(place: Place, event: PlayEvent): Place {
  if (event.type === "stops.restarted") return START;
  const { value, context } = place;
  if (value === "marked") return place;
  if (event.type === "dial.turned") {
    return { value: "turning", context: { ...context, turn: event.turn, problem: null } };
  }
  if (event.type === "stop.asked") return asked(place, event.seen, event.problem);
  const isReady = context.stops.right.length >= 2 && context.stops.left.length >= 2;
  return isReady ? { value: "marked", context: { ...context, mark: event.mark, problem: null } } : place;
}

const plain = (events: readonly PlayEvent[]): Place => events.reduce(after, START);

describe("the chart of finding the play", () => {
  test("is walked through every state and every arrow", () => {
    process.stdout.write(
      `play: ${walked.states.length} states, ${walked.places} with memory, ${walked.arrows} arrows\n`,
    );
    expect(walked.states).toEqual(["kept", "marked", "still", "turning"]);
    expect(walked.untaken).toEqual([]);
    // Drawn so that nothing takes them: what is marked stays.
    expect(walked.unused).toEqual(["marked by dial.turned", "marked by answer.marked"]);
    expect(walked.places).toBeGreaterThan(50);
  });

  test("comes on every path to what the plain description says", () => {
    holdToPlain(playMachine, walked.paths, plain);
  });
});
