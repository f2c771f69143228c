import { describe, expect, test } from "vitest";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import type { RecordedAttempt } from "../../src/trace/recordedAttempt";
import { replay, resultOf } from "../../src/trace/replay";

const threeWheel = shippedProfile("three-wheel");
const encoder = shippedProfile("dial-encoder");

const result = (recorded: Omit<RecordedAttempt, "profile" | "combination"> & Partial<RecordedAttempt>) =>
  resultOf(replay({ profile: threeWheel, combination: [38, 71, 26], ...recorded }));

describe("a perfect hand at 38-71-26", () => {
  const perfect = result({ positions: [0, 338, 71, 226, 190] });

  test("opens, with the dial reading 90 at the positive stop and every wheel true", () => {
    expect(perfect).toMatchObject({ opened: true, dial: 90, errors: [0, 0, 0], faults: [] });
  });

  test("leaves each wheel standing at its number, plus its play where it was dialed right", () => {
    expect(perfect.stands).toEqual([38, 71, 26]);
  });

  test("is read as four runs with arrivals and stop errors; the draw counts at no number", () => {
    expect(perfect.runs).toEqual([
      { turn: "left", from: 0, to: 338, arrivals: 4, stopError: 0 },
      { turn: "right", from: 338, to: 71, arrivals: 3, stopError: 0 },
      { turn: "left", from: 71, to: 226, arrivals: 2, stopError: 0 },
      { turn: "right", from: 226, to: 190, arrivals: null, stopError: null },
    ]);
  });

  test("33-67-46 opens at the same reading", () => {
    expect(result({ combination: [33, 67, 46], positions: [0, 333, 67, 246, 190] })).toMatchObject({
      opened: true,
      dial: 90,
      errors: [0, 0, 0],
    });
  });
});

describe("errors and stands", () => {
  test.each([
    { why: "first number overrun by 4", positions: [0, 342, 71, 226], errors: [4, 0, 0], stands: [42, 71, 26] },
    { why: "second stopped 3 short", positions: [0, 338, 74, 226], errors: [0, 3, 0], stands: [38, 74, 26] },
    { why: "a fourth arrival at 71", positions: [0, 338, -29, 126], errors: [33, 0, 0], stands: [71, 71, 26] },
    { why: "coming back onto 71", positions: [0, 338, 67, 71, 226], errors: [0, -4, 0], stands: [38, 67, 26] },
  ])("$why: errors $errors", ({ positions, errors, stands }) => {
    expect(result({ positions })).toMatchObject({ opened: false, errors, stands });
  });

  test("fixed pins take a gate's offset from the readings", () => {
    const pins = shippedProfile("fixed-pin");
    const fixed = result({ profile: pins, combination: [29, 64, 47], positions: [0, 329, 64, 247, 190] });
    expect(fixed).toMatchObject({ opened: true, errors: [0, 0, 0] });
    // Wheel 2 was dialed right, and leads the cam by 97 + 97.
    expect(fixed.stands).toEqual([29, (64 + 194) % 100, 47]);
  });

  test("an encoder lock has no wheels", () => {
    expect(result({ profile: encoder, positions: [0, 338, 71, 226, 211] })).toMatchObject({
      opened: true,
      dial: 11,
      stands: [],
      errors: [],
    });
  });
});

describe("a start", () => {
  test("is where the first move runs from", () => {
    const { runs } = result({ start: { dial: 12.5 }, positions: [338, 71] });
    expect(runs[0]).toMatchObject({ from: 12.5, to: 338, arrivals: 4 });
  });

  test("without it the hand takes hold at the first position", () => {
    expect(result({ positions: [12.5, 338] }).runs).toHaveLength(1);
    expect(result({ positions: [12.5] })).toMatchObject({ dial: 12.5, stands: [12.5, 12.5, 12.5], runs: [] });
  });

  test("with slack puts the wheels ahead of their drivers", () => {
    const { stands } = result({ start: { dial: 10, slack: [1, 2, 3] }, positions: [10] });
    expect(stands).toEqual([16, 15, 13]);
  });

  test("with all slack a short first turn leaves wheel 1 behind; without, it does not", () => {
    const positions = [238, -29, 126, 90];
    expect(result({ start: { dial: 0, slack: [100, 100, 100] }, positions }).opened).toBe(false);
    expect(result({ start: { dial: 0, slack: [0, 0, 0] }, positions }).opened).toBe(true);
  });

  test("with the wheels at the combination opens to a draw alone", () => {
    const left = result({ positions: [0, 338, 71, 226, 190, 210] });
    expect(left.stands).toEqual([38, 71, 26]);
    const slack = replay({ profile: threeWheel, combination: [38, 71, 26], positions: [0, 338, 71, 226, 190, 210] });
    const again = result({ start: { dial: 10, slack: slack.pack?.slack() }, positions: [-30] });
    expect(again).toMatchObject({ opened: true, dial: 90 });
  });
});

describe("the positive stop", () => {
  test("swallows what the hand pushes on; later positions count as moves from there", () => {
    const pushed = result({ positions: [0, 338, 71, 226, 150] });
    expect(pushed).toMatchObject({ opened: true, dial: 90 });
    // The hand comes back from 150 to 160: the dial goes 10 from its stop.
    expect(result({ positions: [0, 338, 71, 226, 150, 160] }).dial).toBe(0);
  });

  test("is met by a hand that pushes in many small moves all the same", () => {
    const draw = Array.from({ length: 152 }, (_, i) => 226 - (i + 1) / 2);
    expect(result({ positions: [0, 338, 71, 226, ...draw] })).toMatchObject({ opened: true, dial: 90 });
  });
});

describe("once opened", () => {
  const SPUN_OFF = [0, 338, 71, 226, 190, 610];

  test("it stays so after the bolt is thrown and the wheels are spun off", () => {
    const spun = result({ positions: SPUN_OFF });
    expect(spun).toMatchObject({ opened: true, dial: 10, faults: [] });
    expect(spun.errors).not.toEqual([0, 0, 0]);
  });

  test("faults are those of the attempt that opened, whatever is turned after it", () => {
    const positions = [0, 339.125, 71, 226, 190, 610, 300, 700];
    expect(result({ positions }).faults).toMatchObject([{ code: "ran-past", number: 1, size: 1.125 }]);
  });

  test("runs after the draw count at no number", () => {
    const { runs } = result({ positions: SPUN_OFF });
    expect(runs.at(-1)).toEqual({ turn: "left", from: 190, to: 610, arrivals: null, stopError: null });
  });

  test("an encoder lock stays so as well", () => {
    expect(result({ profile: encoder, positions: [0, 338, 71, 226, 211, 611, 300] }).opened).toBe(true);
  });
});

describe("runs that belong to no number", () => {
  test("are those before the fresh start", () => {
    const { runs } = result({ positions: [0, 338, 71, 450, 171, 326, 290] });
    expect(runs.slice(0, 2)).toMatchObject([{ arrivals: null }, { arrivals: null }]);
    expect(runs[2]).toMatchObject({ turn: "left", from: 71, to: 450, arrivals: 4, stopError: 12 });
  });

  test("are turnbacks on the way", () => {
    const { runs } = result({ positions: [0, 100, 90, 338] });
    expect(runs.map(({ arrivals }) => arrivals)).toEqual([1, null, 3]);
  });
});

test("a replay can stop on the way", () => {
  const recorded = { profile: threeWheel, combination: [38, 71, 26], positions: [0, 338, 71, 226, 190] };
  expect([0, 1, 2, 5].map((count) => replay(recorded, count).dial)).toEqual([0, 0, 338, 190]);
});

test("numbers come out tidy, without the dust of their sums", () => {
  const tenths = Array.from({ length: 3381 }, (_, i) => i * 0.1);
  expect(result({ positions: [...tenths, 71, 226, 190] })).toMatchObject({ opened: true, dial: 90, errors: [0, 0, 0] });
});
