import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { layRecording, momentAt, timeAtTurns } from "../../../../src/app/pictures/turnChart/recordedPath";
import {
  acrossOf,
  type ChartRun,
  chartReading,
  type Face,
  faceReading,
  passesOf,
  runsThrough,
  stackRuns,
  turnsAt,
  turnsOf,
} from "../../../../src/app/pictures/turnChart/turnPath";
import { RunFollower } from "../../../../src/dialing/runs";

const HUNDRED: Face = { perTurn: 100, numbersIncrease: "left" };
const run = (from: number, to: number, turnsBefore = 0): ChartRun => ({
  turn: to > from ? "left" : "right",
  from,
  to,
  turnsBefore,
});

// Multiples of 1/64 are exact in binary, and so are their sums.
const exact = (min: number, max: number) => fc.integer({ min: min * 64, max: max * 64 }).map((n) => n / 64);
const faces = fc.record({
  perTurn: fc.constantFrom(16, 50, 60, 64, 100, 128),
  numbersIncrease: fc.constantFrom("left" as const, "right" as const),
});
const stops = fc.array(exact(-900, 900), { minLength: 2, maxLength: 8 });

describe("a run on the chart", () => {
  test("leaves at the right edge and comes in at the left one at the same height", () => {
    expect(passesOf(run(80, 220), HUNDRED)).toEqual([
      { from: { reading: 80, turns: 0 }, to: { reading: 100, turns: 0.2 }, isLeaving: true },
      { from: { reading: 0, turns: 0.2 }, to: { reading: 100, turns: 1.2 }, isLeaving: true },
      { from: { reading: 0, turns: 1.2 }, to: { reading: 20, turns: 1.4 }, isLeaving: false },
    ]);
  });

  test("goes the other way when the turn or the face does", () => {
    const mirrored: Face = { perTurn: 100, numbersIncrease: "right" };
    expect(passesOf(run(20, -30), HUNDRED)).toEqual([
      { from: { reading: 20, turns: 0 }, to: { reading: 0, turns: 0.2 }, isLeaving: true },
      { from: { reading: 100, turns: 0.2 }, to: { reading: 70, turns: 0.5 }, isLeaving: false },
    ]);
    expect(passesOf(run(-20, 30), mirrored)).toEqual(passesOf(run(20, -30), HUNDRED));
  });

  test("that stops on an edge stays at it", () => {
    expect(passesOf(run(50, 100), HUNDRED)).toEqual([
      { from: { reading: 50, turns: 0 }, to: { reading: 100, turns: 0.5 }, isLeaving: false },
    ]);
    expect(chartReading(100, "left", HUNDRED)).toBe(100);
    expect(chartReading(100, "right", HUNDRED)).toBe(0);
    // Sums of moves are rounded.
    expect(passesOf(run(50, 100 + 1e-9), HUNDRED)).toHaveLength(1);
    expect(chartReading(100 + 1e-9, "left", HUNDRED)).toBe(100);
    expect(passesOf(run(100 - 1e-9, 130), HUNDRED)).toHaveLength(1);
    expect(passesOf(run(100, 50), HUNDRED)[0]?.from.reading).toBe(100);
  });

  test("of no length makes no stroke", () => {
    expect(passesOf(run(7, 7), HUNDRED)).toEqual([]);
    expect(runsThrough([5, 5, 5])).toEqual([]);
  });

  test("of a thousand million graduations is thinned out", () => {
    const passes = passesOf(run(0, 1e9), HUNDRED);
    expect(passes.length).toBeGreaterThan(100);
    expect(passes.length).toBeLessThanOrEqual(401);
  });

  test("every line joins", () => {
    fc.assert(
      fc.property(faces, stops, (face, points) => {
        const passes = stackRuns(runsThrough(points), face).flatMap((one) => passesOf(one, face));
        for (const [index, pass] of passes.entries()) {
          const next = passes[index + 1];
          if (next === undefined) continue;
          expect(next.from.turns).toBeCloseTo(pass.to.turns, 9);
          // The same place on the dial: both edges are.
          expect(next.from.reading % face.perTurn).toBeCloseTo(pass.to.reading % face.perTurn, 9);
        }
      }),
    );
  });

  test("begins and ends where the dial does, and is as long as the way turned", () => {
    fc.assert(
      fc.property(faces, exact(-900, 900), exact(-900, 900), (face, from, to) => {
        fc.pre(from !== to);
        const one = run(from, to, 2);
        const passes = passesOf(one, face);
        expect((passes[0]?.from.reading ?? -1) % face.perTurn).toBe(faceReading(from, face));
        expect(passes.at(-1)?.to.reading).toBe(chartReading(to, one.turn, face));
        expect(passes[0]?.from.turns).toBe(2);
        expect(passes.at(-1)?.to.turns).toBeCloseTo(2 + turnsOf(one, face), 9);
        for (const pass of passes) {
          const across = pass.to.reading - pass.from.reading;
          expect(Math.sign(across)).toBe(acrossOf(one.turn, face));
          expect(Math.abs(across) / face.perTurn).toBeCloseTo(pass.to.turns - pass.from.turns, 9);
          expect(Math.min(pass.from.reading, pass.to.reading)).toBeGreaterThanOrEqual(0);
          expect(Math.max(pass.from.reading, pass.to.reading)).toBeLessThanOrEqual(face.perTurn);
        }
      }),
    );
  });
});

describe("stacked runs", () => {
  test("go down whichever way they turn", () => {
    const placed = stackRuns(runsThrough([0, 300, 250, 400]), HUNDRED);
    expect(placed.map(({ turnsBefore }) => turnsBefore)).toEqual([0, 3, 3.5]);
  });

  test("before the top lie above it", () => {
    const placed = stackRuns(runsThrough([0, 300, 250, 400]), HUNDRED, 2);
    expect(placed.map(({ turnsBefore }) => turnsBefore)).toEqual([-3.5, -0.5, 0]);
  });

  test("a position off a run counts as its nearer end", () => {
    expect(turnsAt(run(10, 110, 1), 60, HUNDRED)).toBe(1.5);
    expect(turnsAt(run(10, 110, 1), 111, HUNDRED)).toBe(2);
    expect(turnsAt(run(10, -90, 1), 12, HUNDRED)).toBe(1);
  });
});

describe("a recording on the chart", () => {
  const TURNBACK = 1;
  const sumsOf = (moves: readonly number[]) => {
    let sum = 0;
    return [
      0,
      ...moves.map((by) => {
        sum += by;
        return sum;
      }),
    ];
  };
  const follow = (positions: readonly number[]) => {
    const follower = new RunFollower(positions[0] ?? 0, TURNBACK);
    const runs: { turn: "left" | "right"; from: number; to: number }[] = [];
    const after = positions.map((position) => {
      const change = follower.moveTo(position);
      if (follower.current !== null && change !== "none") {
        runs[change === "begun" ? runs.length : runs.length - 1] = follower.current;
      }
      return runs.length;
    });
    return { runs, after };
  };

  test("keeps to the run that each sample was read as", () => {
    fc.assert(
      fc.property(fc.array(exact(-40, 40), { minLength: 2, maxLength: 60 }), (moves) => {
        const positions = sumsOf(moves);
        const { runs, after } = follow(positions);
        const placed = stackRuns(runs, HUNDRED);
        const times_ms = positions.map((_, index) => index * 10);
        const { moments } = layRecording({ positions, times_ms }, placed, HUNDRED, TURNBACK);
        const expected = positions.map((position, index) => {
          const own = placed[Math.max(0, (after[index] ?? 0) - 1)];
          return { position, turns: own === undefined ? 0 : turnsAt(own, position, HUNDRED) };
        });
        expect(moments).toEqual(expected);
      }),
    );
  });

  test("does not go beyond a positive stop, and comes back from it at once", () => {
    const placed = stackRuns(runsThrough([0, 50, 20, 40]), HUNDRED);
    const positions = [0, 50, 20, 10, 30];
    const { moments } = layRecording({ positions, times_ms: [0, 1, 2, 3, 4] }, placed, HUNDRED, TURNBACK);
    expect(moments.map(({ position }) => position)).toEqual([0, 50, 20, 20, 40]);
  });

  const laid = layRecording(
    { positions: [0, 100, 100, 50], times_ms: [1000, 2000, 2500, 3000] },
    stackRuns(runsThrough([0, 100, 50]), HUNDRED),
    HUNDRED,
    TURNBACK,
  );

  test.each([
    [0, 0, 0],
    [1250, 25, 0.25],
    [2250, 100, 1],
    [2750, 75, 1.25],
    [9000, 50, 1.5],
  ])("at %i ms stands at %f, %f turns in", (time_ms, position, turns) => {
    expect(momentAt(laid, time_ms)).toEqual({ position, turns });
  });

  test("tells when it came to a height first", () => {
    expect(timeAtTurns(laid, 0.25)).toBe(1250);
    expect(timeAtTurns(laid, 1)).toBe(2000);
    expect(timeAtTurns(laid, 1.25)).toBe(2750);
    expect(timeAtTurns(laid, 99)).toBe(3000);
    expect(timeAtTurns(laid, -1)).toBe(1000);
  });

  test("of nothing has no moment", () => {
    expect(momentAt(layRecording({ positions: [], times_ms: [] }, [], HUNDRED, TURNBACK), 5)).toBeNull();
  });
});
