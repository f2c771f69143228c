import { describe, expect, test } from "vitest";
import { type VisitContext, type VisitEvent, type VisitPhase, visitMachine } from "../../src/service/visitMachine";
import { holdToPlain, walkedChart } from "../support/walkedChart";

const EVENTS: readonly VisitEvent[] = [
  { type: "door.opened" },
  { type: "door.shut" },
  { type: "lock.disturbed" },
  { type: "try.made", opened: true },
  { type: "try.made", opened: false },
  { type: "act.stopped", by: "door-is-shut" },
  { type: "act.done" },
  { type: "visit.ended" },
  { type: "visit.restarted" },
];

const walked = walkedChart(visitMachine, EVENTS);

interface Plain {
  readonly value: VisitPhase;
  readonly context: VisitContext;
}

const FRESH: Plain = {
  value: "shut",
  context: {
    triedBefore: false,
    isDisturbed: false,
    openings: 0,
    shutUnproved: false,
    stopped: null,
    endedAt: null,
  },
};

const noteOf = (now: Plain, value: VisitPhase, context: Partial<VisitContext> = {}): Plain => ({
  value,
  context: { ...now.context, stopped: null, ...context },
});

const isShut = ({ value }: Plain) => value === "shut" || value === "shutUnproved";

function tried(now: Plain, opened: boolean): Plain {
  const { openings, isDisturbed } = now.context;
  const triedBefore = now.context.triedBefore || !isDisturbed;
  if (isShut(now)) return noteOf(now, now.value, { triedBefore });
  const inRow = opened ? Math.min(3, openings + 1) : 0;
  if (now.value === "open") return noteOf(now, "open", { triedBefore, openings: inRow });
  return noteOf(now, inRow === 3 ? "proved" : "disturbed", { triedBefore, openings: inRow });
}

function shut(now: Plain): Plain {
  if (isShut(now)) return now;
  return now.value === "disturbed" ? noteOf(now, "shutUnproved", { shutUnproved: true }) : noteOf(now, "shut");
}

function opened(now: Plain): Plain {
  if (!isShut(now)) return now;
  return noteOf(now, now.value === "shut" ? "open" : "disturbed");
}

function disturbed(now: Plain): Plain {
  const value = isShut(now) ? "shutUnproved" : "disturbed";
  const shutUnproved = now.context.shutUnproved || isShut(now);
  return noteOf(now, value, { isDisturbed: true, openings: 0, shutUnproved });
}

/** What one event comes to, in plain words and with no chart. */
function then(now: Plain, event: VisitEvent): Plain {
  if (event.type === "visit.restarted") return FRESH;
  if (now.value === "left") return now;
  switch (event.type) {
    case "door.opened":
      return opened(now);
    case "door.shut":
      return shut(now);
    case "lock.disturbed":
      return disturbed(now);
    case "try.made":
      return tried(now, event.opened);
    case "act.stopped":
      return noteOf(now, now.value, { stopped: event.by });
    case "act.done":
      return noteOf(now, now.value);
    case "visit.ended":
      return noteOf(now, "left", { endedAt: now.value });
  }
}

describe("the chart of a service visit", () => {
  test("is walked through every state and every arrow", () => {
    process.stdout.write(
      `service visit: ${walked.states.length} states, ${walked.places} with memory, ${walked.arrows} arrows\n`,
    );
    expect(walked.states).toEqual(["disturbed", "left", "open", "proved", "shut", "shutUnproved"]);
    expect([walked.untaken, walked.unused]).toEqual([[], []]);
  });

  test("comes on every path to what the plain description says", () => {
    holdToPlain(visitMachine, walked.paths, (events) => events.reduce(then, FRESH));
  });
});
