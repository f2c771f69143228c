import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { signedText } from "../../../../src/app/parts/signedText";
import { chartModel } from "../../../../src/app/pictures/turnChart/chartEvents";
import { eventDetail, eventLabel, eventName, stretchLabel } from "../../../../src/app/pictures/turnChart/chartWords";
import { placeLabels, spread } from "../../../../src/app/pictures/turnChart/placeLabels";
import { runTable } from "../../../../src/app/pictures/turnChart/runTable";
import type { Face } from "../../../../src/app/pictures/turnChart/turnPath";
import { Attempt } from "../../../../src/dialing/attempt";
import { tellFaults } from "../../../../src/dialing/faultWords";
import { idealMotion } from "../../../../src/dialing/idealMotion";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";

const profile = shippedProfile("three-wheel");
const combination = [33, 67, 46];
const face: Face = { perTurn: profile.graduations, numbersIncrease: profile.numbersIncrease };

const dialed = (stops: readonly number[]) => {
  const attempt = new Attempt(profile, combination, { dial: stops[0] ?? 0 });
  for (const [index, stop] of stops.entries()) if (index > 0) attempt.turnBy(stop - (stops[index - 1] ?? stop));
  return attempt;
};
const modelOf = (attempt: Attempt) => chartModel(attempt, tellFaults(attempt), face, true);
const ideal = (errors: number[]) => idealMotion(profile, combination, 0, errors, 3);

describe("the events of an attempt", () => {
  test("are its arrivals, its stops and the bolt", () => {
    const attempt = dialed(ideal([0.4, -0.3, 0.2]));
    const { events } = modelOf(attempt);
    expect(events.map((event) => eventLabel(event) || eventName(event, attempt))).toEqual([
      "Arrival 1 of 4 or more at 33",
      "Arrival 2 of 4 or more at 33",
      "Arrival 3 of 4 or more at 33",
      "+0.4",
      "Arrival 1 of 3 at 67",
      "Arrival 2 of 3 at 67",
      "\u22120.3",
      "Arrival 1 of 2 at 46",
      "+0.2",
      "open",
    ]);
    expect(events.filter(({ kind }) => kind === "stop").map((event) => eventName(event, attempt))[1]).toBe(
      "Stop at 67.3, 0.3 graduations short of 67",
    );
  });

  test("a stop that ran past leaves its last arrival on the number, and tells the fault", () => {
    const attempt = dialed(ideal([0, 1.8]));
    const own = modelOf(attempt).events.filter(({ step }) => step === 1);
    expect(own.map(({ kind }) => kind)).toEqual(["arrival", "arrival", "arrival", "stop"]);
    expect(own.at(-2)?.position).toBeCloseTo(67 - 0, 9);
    const stop = own.at(-1);
    expect(stop && eventLabel(stop)).toBe("+1.8 ran past");
    expect(stop && eventDetail(stop)).toBe("You ran 1.8 graduations past 67.");
  });

  test("a stop short beyond tolerance has not arrived", () => {
    const own = modelOf(dialed(ideal([-2]))).events.filter(({ step }) => step === 0);
    expect(own.map(({ kind, arrivals }) => [kind, arrivals])).toEqual([
      ["arrival", 1],
      ["arrival", 2],
      ["arrival", 3],
      ["stop", 3],
    ]);
  });

  test("an attempt under way has no stop at its end", () => {
    const attempt = dialed([0, 333]);
    const { events, stretches } = chartModel(attempt, [], face, false);
    expect(events.map(({ kind }) => kind)).toEqual(["arrival", "arrival", "arrival", "arrival"]);
    expect(stretches.map((stretch) => stretchLabel(stretch, attempt))).toEqual(["L 33"]);
  });

  test("a fresh start is the top of the chart, but a wrong turn before it is shown", () => {
    const spunOff = modelOf(dialed([0, -400, -67]));
    expect(spunOff.stretches.map(({ step }) => step)[0]).toBe(0);
    expect(spunOff.turns).toBeCloseTo(3.33, 9);
    const wrong = modelOf(dialed([0, -333, -290]));
    expect(wrong.top).toBe(0);
    expect(wrong.events.some(({ faults }) => faults[0]?.code === "wrong-way")).toBe(true);
  });

  test("a turnback is marked at its corner", () => {
    const attempt = dialed([0, 180, 176, 333, -33, 146, 90]);
    const event = modelOf(attempt).events.find(({ faults }) => faults[0]?.code === "extra-turnback");
    expect(event?.position).toBe(180);
    expect(event?.turns).toBeCloseTo(1.8, 9);
  });

  test("lie on the path in its order, whatever the hand did", () => {
    const moves = fc.array(fc.double({ min: -450, max: 450, noNaN: true }), { maxLength: 14 });
    fc.assert(
      fc.property(moves, (list) => {
        const attempt = new Attempt(profile, combination, { dial: 0 });
        for (const by of list) attempt.turnBy(by);
        const { events, turns, runs, top } = modelOf(attempt);
        const heights = events.map((event) => event.turns);
        expect(heights).toEqual(heights.toSorted((a, b) => a - b));
        expect(new Set(events.map(({ id }) => id)).size).toBe(events.length);
        for (const height of heights) expect(height).toBeLessThanOrEqual(turns + 1e-9);
        expect(runs[top]?.turnsBefore ?? 0).toBe(0);
        const model = { runs, top, turns, events, stretches: [] };
        const { rows } = runTable(attempt, model, { isOver: true, hasFigures: true });
        expect(rows).toHaveLength(runs.length - top);
      }),
    );
  });
});

describe("words and labels", () => {
  test.each([
    [0.4, "+0.4"],
    [-1.25, "\u22121.3"],
    [0.04, "0.0"],
    [-0.01, "0.0"],
  ])("a stop error of %f reads %s", (error, text) => {
    expect(signedText(error)).toBe(text);
  });

  const bounds = { left: 0, right: 400, top: 0, bottom: 120 };
  const wish = (x: number, y: number, ahead: 1 | -1 = 1) => ({ x, y, ahead, text: "+0.4", isPassedBy: false });

  test("a label stands ahead of its stop, and flips at the edge", () => {
    expect(placeLabels([wish(100, 60)], bounds, [])).toEqual([{ x: 109, y: 60, anchor: "start" }]);
    expect(placeLabels([wish(395, 60)], bounds, [])[0]?.anchor).toBe("end");
    expect(placeLabels([wish(5, 60, -1)], bounds, [])[0]?.anchor).toBe("start");
  });

  test("two labels in one place do not cover each other", () => {
    const [first, second] = placeLabels([wish(100, 60), wish(101, 61)], bounds, []);
    expect(first?.y === second?.y && first?.anchor === second?.anchor).toBe(false);
  });

  test("spread neighbors keep order and distance", () => {
    expect(spread([0, 3, 50], 10, 100)).toEqual([0, 10, 50]);
    expect(spread([95, 98], 10, 100)).toEqual([90, 100]);
  });
});
