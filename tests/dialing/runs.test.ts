import { describe, expect, test } from "vitest";
import { arrivals, distanceTo, type Run, RunFollower, runLength, stopError } from "../../src/dialing/runs";
import type { Graduations } from "../../src/lock/dial";

/** The runs of a motion, as the follower cuts it. */
function runsOf(positions: readonly Graduations[], turnback: Graduations): Run[] {
  const [start = 0, ...others] = positions;
  const follower = new RunFollower(start, turnback);
  const runs: Run[] = [];
  for (const position of others) {
    const change = follower.moveTo(position);
    if (change === "none" || follower.current === null) continue;
    runs[change === "begun" ? runs.length : runs.length - 1] = follower.current;
  }
  return runs;
}

const left = (from: Graduations, to: Graduations): Run => ({ turn: "left", from, to });
const right = (from: Graduations, to: Graduations): Run => ({ turn: "right", from, to });

describe("a motion falls into runs", () => {
  test.each([
    { why: "a dial that rests makes none", positions: [12, 12, 12], runs: [] },
    { why: "one way is one run, however many moves", positions: [0, 10, 35, 338], runs: [left(0, 338)] },
    {
      why: "a turn about ends it at its furthest point",
      positions: [0, 338, 71],
      runs: [left(0, 338), right(338, 71)],
    },
    { why: "coming back less than the turnback is a wobble", positions: [0, 10, 9.5, 20], runs: [left(0, 20)] },
    { why: "coming back just the turnback is a wobble", positions: [0, 10, 9, 20], runs: [left(0, 20)] },
    {
      why: "coming back a hair more is a run of its own",
      positions: [0, 10, 8.984375, 20],
      runs: [left(0, 10), right(10, 8.984375), left(8.984375, 20)],
    },
    {
      why: "small steps back add up, from the furthest point on",
      positions: [0, 10, 9.5, 9.25, 8.5, 8],
      runs: [left(0, 10), right(10, 8)],
    },
    {
      why: "a wobble forward does not save a run that is drifting back",
      positions: [0, 10, 9.25, 9.5, 8.75],
      runs: [left(0, 10), right(10, 8.75)],
    },
    { why: "a first move is a run, however small", positions: [50, 49.5], runs: [right(50, 49.5)] },
    {
      why: "a first wobble the other way is a run too",
      positions: [50, 50.25, 20],
      runs: [left(50, 50.25), right(50.25, 20)],
    },
  ])("$why", ({ positions, runs }) => {
    expect(runsOf(positions, 1)).toEqual(runs);
  });

  test("without a turnback any motion back ends a run", () => {
    expect(runsOf([0, 10, 9.984375, 11], 0)).toEqual([left(0, 10), right(10, 9.984375), left(9.984375, 11)]);
  });

  test("a follower tells whether a run began, grew or only wobbled", () => {
    const follower = new RunFollower(0, 1);
    expect([0, 5, 5, 4.5, 6, 4, 4.5, 2].map((position) => follower.moveTo(position))).toEqual([
      "none",
      "begun",
      "none",
      "none",
      "grown",
      "begun",
      "none",
      "grown",
    ]);
    expect(follower.position).toBe(2);
  });
});

describe("how often a number arrives", () => {
  test.each([
    { why: "each time its mark comes to the index", run: left(0, 338), number: 38, count: 4 },
    { why: "to the right as well", run: right(338, 71), number: 71, count: 3 },
    { why: "not while it is only ahead", run: left(0, 30), number: 38, count: 0 },
    { why: "not for the mark the run starts on", run: left(38, 238), number: 38, count: 2 },
    { why: "nor for one it starts just beyond", run: left(38.5, 238), number: 38, count: 2 },
    { why: "nor for one it starts just short of, within the tolerance", run: left(37, 238), number: 38, count: 2 },
    { why: "but for one it starts further short of", run: left(36.984375, 238), number: 38, count: 3 },
    { why: "for one it stops just short of, within the tolerance", run: left(0, 337), number: 38, count: 4 },
    { why: "not for one it stops further short of", run: left(0, 336.984375), number: 38, count: 3 },
    { why: "nor for one it starts just short of to the right", run: right(72, -29), number: 71, count: 1 },
    { why: "but for one it starts further short of to the right", run: right(72.015625, -29), number: 71, count: 2 },
    { why: "never in a run that starts and stops on it", run: left(38.5, 38.75), number: 38, count: 0 },
    { why: "at marks below zero too", run: right(0, -362), number: 38, count: 4 },
    { why: "at the number 0", run: left(5, 300), number: 0, count: 3 },
  ])("counts $why ($run.turn from $run.from to $run.to, at $number)", ({ run, number, count }) => {
    expect(arrivals(run, number, 100, 1)).toBe(count);
  });

  test("goes by the dial's own turn", () => {
    expect(arrivals(left(0, 203), 23, 60, 0.75)).toBe(4);
  });
});

describe("a stop error", () => {
  test.each([
    { why: "left beyond ran past", turn: "left", stop: 339.5, number: 38, error: 1.5 },
    { why: "left before stopped short", turn: "left", stop: 336.5, number: 38, error: -1.5 },
    { why: "right beyond ran past", turn: "right", stop: 69.5, number: 71, error: 1.5 },
    { why: "right before stopped short", turn: "right", stop: 73.5, number: 71, error: -2.5 },
    { why: "on the number there is none", turn: "right", stop: -29, number: 71, error: 0 },
    { why: "across the zero", turn: "left", stop: 101, number: 98, error: 3 },
    { why: "half a turn off counts as run past to the left", turn: "left", stop: 88, number: 38, error: 50 },
    { why: "half a turn off counts as short to the right", turn: "right", stop: 88, number: 38, error: -50 },
  ] as const)("$why ($turn to $stop, number $number)", ({ turn, stop, number, error }) => {
    expect(Object.is(stopError(turn, stop, number, 100), error)).toBe(true);
  });
});

test.each([
  { why: "ahead to the left", number: 38, from: 10, turn: "left", way: 28 },
  { why: "ahead to the right", number: 38, from: 10, turn: "right", way: 72 },
  { why: "a whole turn from the mark itself", number: 38, from: 338, turn: "left", way: 100 },
] as const)("the next mark is $why", ({ number, from, turn, way }) => {
  expect(distanceTo(number, from, turn, 100)).toBe(way);
});

test("a run is as long as its way, whichever its direction", () => {
  expect([runLength(left(5, 12.5)), runLength(right(12.5, 5))]).toEqual([7.5, 7.5]);
});
