import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { replayLine } from "../../src/cli/replayBatch";
import { SHIPPED_PROFILES } from "../../src/lock/shippedProfiles";
import { draws } from "../support/draws";
import { COMBINATION, FAULT_TRACES } from "../support/faultTraces";

const RUNS = { numRuns: draws(300, 3000) };

/** Every number in a result, however deep. */
const numbersIn = (value: unknown): number[] => {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : [];
};

/** A line is answered: by a result whose every number is one, or by a sentence with the line's number. */
function checkLine(line: string, lineNumber: number): void {
  const { written: result, status } = replayLine(line, lineNumber);
  // Nothing that comes from outside may go wrong inside.
  expect(status).toBe("error" in result ? 1 : 0);
  if ("error" in result) {
    expect(Object.keys(result)).toEqual(["error"]);
    expect(result.error).toMatch(new RegExp(`^line ${lineNumber}: \\S`));
    return;
  }
  expect(Object.keys(result)).toEqual(["opened", "dial", "stands", "errors", "runs", "faults"]);
  expect(numbersIn(result).filter((number) => !Number.isFinite(number))).toEqual([]);
  expect(result.dial).toBeGreaterThanOrEqual(0);
  // What goes out is JSON, and comes back as it went.
  expect(JSON.parse(JSON.stringify(result))).toEqual(result);
}

const lineNumbers = fc.integer({ min: 1, max: 1e6 });

const VALID = FAULT_TRACES.map(({ profile, hand, times }) => ({
  profile,
  combination: COMBINATION,
  start: profile === "three-wheel" ? { dial: 0, slack: [0, 0, 0] } : { dial: 0 },
  positions: hand,
  ...(times && { times_ms: times }),
}));
const validLine = fc.constantFrom(...VALID).map((attempt) => JSON.stringify(attempt));

const wild = fc.oneof(
  fc.double(),
  fc.constantFrom(1e308, -1e308, 1e9, -1e9, 1e9 + 1, 5e-324, -0, 2 ** 53, 1e21),
  fc.integer(),
);
const anything = fc.oneof(wild, fc.jsonValue(), fc.constantFrom(null, true, "", "three-wheel", [], {}, [null], [[0]]));

describe("no line brings the replay down", () => {
  test("random text", () => {
    fc.assert(fc.property(fc.string({ unit: "binary" }), lineNumbers, checkLine), RUNS);
  });

  test("random JSON", () => {
    fc.assert(fc.property(fc.json(), lineNumbers, checkLine), RUNS);
  });

  test("a valid line cut off anywhere", () => {
    fc.assert(
      fc.property(validLine, fc.nat(), lineNumbers, (line, cut, number) =>
        checkLine(line.slice(0, cut % line.length), number),
      ),
      RUNS,
    );
  });

  test("a valid line with a character changed, dropped or doubled", () => {
    fc.assert(
      fc.property(validLine, fc.nat(), fc.string({ maxLength: 2 }), lineNumbers, (line, at, put, number) => {
        const i = at % line.length;
        checkLine(line.slice(0, i) + put + line.slice(i + 1), number);
        checkLine(line.slice(0, i) + put + line.slice(i), number);
      }),
      RUNS,
    );
  });

  test("a valid line with a field that is anything", () => {
    const field = fc.constantFrom("profile", "combination", "start", "positions", "times_ms");
    fc.assert(
      fc.property(fc.constantFrom(...VALID), field, anything, lineNumbers, (attempt, name, value, number) => {
        checkLine(JSON.stringify({ ...attempt, [name]: value }), number);
      }),
      RUNS,
    );
  });

  test("a valid line with wild numbers in its lists", () => {
    fc.assert(
      fc.property(fc.constantFrom(...VALID), fc.nat(), wild, lineNumbers, (attempt, at, value, number) => {
        const put = (list: readonly number[]) => list.map((one, i) => (i === at % list.length ? value : one));
        checkLine(JSON.stringify({ ...attempt, positions: put(attempt.positions) }), number);
        checkLine(JSON.stringify({ ...attempt, combination: put(attempt.combination) }), number);
        checkLine(JSON.stringify({ ...attempt, start: { dial: value, slack: attempt.start.slack } }), number);
        checkLine(JSON.stringify({ ...attempt, start: { dial: 0, slack: put([0, 0, 0]) } }), number);
        if (attempt.times_ms) checkLine(JSON.stringify({ ...attempt, times_ms: put(attempt.times_ms) }), number);
      }),
      RUNS,
    );
  });

  test("a whole profile with a field that is anything", () => {
    const profiles = fc.constantFrom(...SHIPPED_PROFILES);
    const field = fc.constantFrom(
      "kind",
      "graduations",
      "procedure",
      "draw",
      "wheelPack",
      "stopTolerance",
      "turnback",
      "combinationRules",
      "pauseLimit_s",
      "wrongTry",
      "numbersIncrease",
    );
    fc.assert(
      fc.property(profiles, field, anything, lineNumbers, (profile, name, value, number) => {
        const positions = [0, 338, 71, 226, 100, 500];
        const times_ms = positions.map((_, i) => i * 40_000);
        const combination = profile.asSet;
        checkLine(JSON.stringify({ profile: { ...profile, [name]: value }, combination, positions, times_ms }), number);
      }),
      RUNS,
    );
  });

  test("positions as wild as they may be", () => {
    const far = fc.oneof(
      fc.double({ min: -1e9, max: 1e9, noNaN: true }),
      fc.double({ min: -500, max: 500, noNaN: true }),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...SHIPPED_PROFILES),
        fc.array(far, { minLength: 1 }),
        lineNumbers,
        (profile, positions, number) => {
          checkLine(JSON.stringify({ profile: profile.id, combination: profile.asSet, positions }), number);
        },
      ),
      { numRuns: draws(100, 1000) },
    );
  });
});

test("a line that is sound is answered by a result", () => {
  for (const attempt of VALID) expect(replayLine(JSON.stringify(attempt), 1).written).not.toHaveProperty("error");
});
