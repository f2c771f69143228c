import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readSetup, type SetupRecord } from "../../../src/realdial/setup/setupRecord";
import { setupVerdict, stopError, stopsAsked, stopVerdict } from "../../../src/realdial/setup/stopAsked";
import { StopTaker } from "../../../src/realdial/setup/stopTaker";

/** Looks at a dial that goes through places, a look every 100 ms, and rests at the last for so long. */
function looked(taker: StopTaker, places: readonly number[], rest_ms: number) {
  let at = 0;
  let last = taker.take(places[0] ?? 0, at);
  const look = (position: number) => {
    at += 100;
    last = taker.take(position, at);
  };
  for (const place of places.slice(1)) look(place);
  for (let waited = 0; waited < rest_ms; waited += 100) look(places.at(-1) ?? 0);
  return last;
}

describe("stops that a setup asks for", () => {
  test.each([
    [100, [25, 75, 0]],
    [60, [15, 45, 0]],
  ])("of a dial of %i they are at three places, come to from both sides", (perTurn, numbers) => {
    expect(stopsAsked(perTurn).map(({ number }) => number)).toEqual(numbers);
    expect(new Set(stopsAsked(perTurn).map(({ turn }) => turn)).size).toBe(2);
  });

  test("an error is the shorter way, and the same in any turn", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -50, max: 50 }),
        fc.double({ min: -49, max: 49, noNaN: true }),
        fc.constantFrom(0, 25, 75),
        (turns, off, number) => {
          expect(stopError(number + off + 100 * turns, number, 100)).toBeCloseTo(off, 6);
        },
      ),
    );
  });

  test.each([
    [0.1, 0.04, "agrees"],
    [-0.3, 0.04, "agrees"],
    [0.31, 0.04, "near"],
    [0.5, 0.04, "near"],
    [-1, 0.04, "near"],
    [1.1, 0.04, "off"],
    // No hand stops nearer than a step of its device.
    [1.1, 1.2, "agrees"],
    [1.7, 1.2, "near"],
    [2, 1.2, "off"],
  ] as const)("an error of %f with steps of %f: %s", (error, resolution, verdict) => {
    expect(stopVerdict(error, resolution)).toBe(verdict);
  });
});

describe("what the three stops come to", () => {
  test.each([
    ["good where each agrees", [0.1, -0.2, 0.3], { verdict: "good" }],
    ["shifted where all are off the same way", [0.9, 1.1, 1], { verdict: "shifted", by: 1 }],
    ["uneven where they differ", [0, 1.2, 0], { verdict: "uneven", most: 1.2 }],
    ["uneven where each side is off its own way", [0.5, -0.5, 0.5], { verdict: "uneven", most: 0.5 }],
  ] as const)("%s", (_, errors, came) => {
    const got = setupVerdict(errors, 0.04);
    expect(got).toEqual("by" in came ? { ...came, by: expect.closeTo(came.by, 6) } : came);
  });
});

describe("a stop is taken", () => {
  const left = { number: 25, turn: "left" } as const;
  test.each([
    ["where it rests by the turn asked for", left, [10, 15, 20, 25.2], 1100, { state: "stopped", error: 0.2 }],
    ["a turn later as well", left, [10, 60, 110, 124.9], 1100, { state: "stopped", error: -0.1 }],
    ["not before it has rested for a second", left, [10, 15, 20, 25], 700, { state: "turning" }],
    ["not far from the number", left, [10, 15, 20], 1500, { state: "turning" }],
    ["not by the other turn", left, [40, 30, 25], 1500, { state: "other-turn" }],
    ["not where the hand has turned back", left, [10, 20, 28, 25], 1500, { state: "other-turn" }],
    ["where the hand only wobbled", left, [10, 20, 25.6, 25], 1500, { state: "stopped", error: 0 }],
    ["from the right", { number: 75, turn: "right" }, [0, -10, -25], 1500, { state: "stopped", error: 0 }],
    ["of a dial that stood there before it was asked", left, [25], 1500, { state: "stopped", error: 0 }],
  ] as const)("%s", (_, asked, places, rest_ms, came) => {
    const got = looked(new StopTaker(asked, 100), places, rest_ms);
    expect(got).toEqual(
      came.state === "stopped" ? { ...came, error: expect.closeTo(came.error, 6), noise: expect.closeTo(0, 6) } : came,
    );
  });

  test("not where the hand turned back between two looks", () => {
    const taker = new StopTaker(left, 100);
    taker.take(10, 0);
    taker.turned(31);
    expect(looked(taker, [25], 1500).state).toBe("other-turn");
  });

  test("only after a whole rest in sight", () => {
    const taker = new StopTaker(left, 100);
    expect(looked(taker, [10, 20, 25], 900).state).toBe("turning");
    taker.loseSight();
    expect(taker.take(25, 1200).state).toBe("turning");
    expect(taker.take(25, 2200).state).toBe("stopped");
  });
});

describe("what a setup found is remembered", () => {
  const record: SetupRecord = {
    at: 1_790_000_000_000,
    perTurn: 100,
    resolution: 0.06,
    noise: 0.02,
    rate: 30,
    delay_ms: 80,
    errors: [0.1, -0.2, 0],
  };
  test("as it was", () => expect(readSetup(JSON.stringify(record))).toEqual(record));
  test.each([
    ["nothing", null],
    ["no JSON", "{"],
    ["another thing", "[]"],
    ["an error of no dial", JSON.stringify({ ...record, errors: [1e9] })],
    ["more stops than are asked for", JSON.stringify({ ...record, errors: [0, 0, 0, 0] })],
  ])("and %s is none", (_, text) => expect(readSetup(text)).toBeNull());
});
