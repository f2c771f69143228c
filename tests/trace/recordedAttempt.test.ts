import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { LockError } from "../../src/lock/lockError";
import { SHIPPED_PROFILES, shippedProfile } from "../../src/lock/shippedProfiles";
import { parseAttempt, parseAttemptLine, writeAttemptLine } from "../../src/trace/recordedAttempt";
import { replay } from "../../src/trace/replay";
import { TraceError } from "../../src/trace/traceError";

const good = { profile: "three-wheel", combination: [38, 71, 26], positions: [0, 338] };
const whole = shippedProfile("three-wheel");

const problemOf = (value: unknown): string => {
  try {
    replay(parseAttempt(value));
  } catch (error) {
    if (error instanceof TraceError || error instanceof LockError) return error.message;
    throw error;
  }
  return "";
};

describe("a bad line is told in one sentence that names the field", () => {
  test.each([
    { why: "no object", value: 12, says: ['"profile", "combination" and "positions"'] },
    { why: "nothing", value: null, says: ["must be an object"] },
    { why: "a list", value: [1, 2], says: ["must be an object"] },
    { why: "no profile", value: { ...good, profile: undefined }, says: ["profile", "missing"] },
    { why: "an unknown profile", value: { ...good, profile: "five-wheel" }, says: ['"five-wheel"', "three-wheel"] },
    { why: "a profile that is no object", value: { ...good, profile: 7 }, says: ["profile"] },
    { why: "a profile of no kind", value: { ...good, profile: {} }, says: ["profile", "kind", "wheel-pack"] },
    {
      why: "a profile with a bad field deep down",
      value: { ...good, profile: { ...whole, wheelPack: { freePlay: [100, 100, -1], gateTolerance: [1, 1, 1] } } },
      says: ["profile: wheelPack.freePlay[2]", "-1"],
    },
    { why: "no combination", value: { ...good, combination: undefined }, says: ["combination"] },
    {
      why: "a combination too short",
      value: { ...good, combination: [38, 71] },
      says: ["combination", "2", "takes 3"],
    },
    { why: "a combination too long", value: { ...good, combination: [1, 2, 3, 4] }, says: ["combination", "4"] },
    { why: "a number off the dial", value: { ...good, combination: [38, 171, 26] }, says: ["combination[1]", "171"] },
    { why: "the number 100", value: { ...good, combination: [38, 71, 100] }, says: ["combination[2]", "mark 0"] },
    { why: "a number below zero", value: { ...good, combination: [-1, 71, 26] }, says: ["combination[0]", "-1"] },
    { why: "a number that is text", value: { ...good, combination: ["38", 71, 26] }, says: ["combination[0]"] },
    { why: "no positions", value: { ...good, positions: undefined }, says: ["positions", "missing"] },
    { why: "an empty list of positions", value: { ...good, positions: [] }, says: ["positions", "at least one"] },
    { why: "a position that is text", value: { ...good, positions: [0, "338"] }, says: ["positions[1]", "number"] },
    { why: "a position that is null", value: { ...good, positions: [0, null] }, says: ["positions[1]", "null"] },
    { why: "a position too far off", value: { ...good, positions: [0, 2e9] }, says: ["positions[1]", "1e9"] },
    { why: "times that are no list", value: { ...good, times_ms: 3 }, says: ["times_ms"] },
    { why: "a time too few", value: { ...good, times_ms: [0] }, says: ["times_ms has 1 entry for 2 positions"] },
    { why: "a time that is text", value: { ...good, times_ms: [0, "9"] }, says: ["times_ms[1]"] },
    { why: "a time that runs back", value: { ...good, times_ms: [9, 8] }, says: ["times_ms[1]", "8", "earlier"] },
    { why: "a start that is a number", value: { ...good, start: 12.5 }, says: ["start", "dial"] },
    { why: "a start without a dial", value: { ...good, start: {} }, says: ["start.dial", "missing"] },
    { why: "a start that is a list", value: { ...good, start: [] }, says: ["start", "dial"] },
    { why: "a dial beyond all numbers", value: { ...good, start: { dial: Infinity } }, says: ["start.dial"] },
    { why: "a slack that is text", value: { ...good, start: { dial: 1, slack: ["0"] } }, says: ["start.slack[0]"] },
    { why: "a position beyond all numbers", value: { ...good, positions: [0, -Infinity] }, says: ["positions[1]"] },
    { why: "a start that is null", value: { ...good, start: null }, says: ["start"] },
    { why: "a start too far off", value: { ...good, start: { dial: 3e9 } }, says: ["3000000000"] },
    {
      why: "a slack too few",
      value: { ...good, start: { dial: 0, slack: [0, 0] } },
      says: ["start.slack", "3 wheels"],
    },
    { why: "a slack below zero", value: { ...good, start: { dial: 0, slack: [0, -1, 0] } }, says: ["start.slack[1]"] },
    { why: "a slack beyond the play", value: { ...good, start: { dial: 0, slack: [101, 0, 0] } }, says: ["slack[0]"] },
    { why: "a slack that is text", value: { ...good, start: { dial: 0, slack: "all" } }, says: ["start.slack"] },
    {
      why: "slack for a lock without wheels",
      value: { ...good, profile: "dial-encoder", start: { dial: 0, slack: [0, 0, 0] } },
      says: ["start.slack", "dial-encoder"],
    },
  ])("$why", ({ value, says }) => {
    const problem = problemOf(value);
    for (const words of says) expect(problem).toContain(words);
    expect(problem).not.toMatch(/\n|undefined|\[object/);
  });

  test.each(["", "nonsense", '{"profile":', "{} {}", `{"profile": "${"x".repeat(90)}`])("no JSON: %j", (line) => {
    expect(() => parseAttemptLine(line)).toThrow(TraceError);
    expect(() => parseAttemptLine(line)).toThrow(/not one whole JSON object/);
  });

  test("a long line is quoted by its beginning only", () => {
    expect(() => parseAttemptLine("x".repeat(10_000))).toThrow(
      expect.objectContaining({ message: expect.stringMatching(/^.{1,100}$/) }),
    );
  });
});

describe("what is left out or added", () => {
  test("fields it does not know are passed over", () => {
    expect(problemOf({ ...good, trainee: "A", note: [1] })).toBe("");
  });

  test("times may stand still", () => {
    expect(problemOf({ ...good, times_ms: [5, 5] })).toBe("");
  });

  test("a whole profile is as good as an id", () => {
    expect(parseAttempt({ ...good, profile: JSON.parse(JSON.stringify(whole)) }).profile).toEqual(whole);
  });
});

describe("writing", () => {
  const attempts = fc.constantFrom(...SHIPPED_PROFILES).chain((profile) =>
    fc
      .record({
        isWhole: fc.boolean(),
        positions: fc.array(fc.integer({ min: -1e6, max: 1e6 }), { minLength: 1, maxLength: 20 }),
        steps: fc.option(fc.array(fc.nat({ max: 900 }), { minLength: 20, maxLength: 20 })),
        dial: fc.option(fc.integer({ min: -300, max: 300 })),
      })
      .map(({ isWhole, positions, steps, dial }) => {
        let now = 0;
        const times_ms = steps?.slice(0, positions.length).map((step) => {
          now += step;
          return now;
        });
        const slack = profile.kind === "wheel-pack" ? { slack: profile.wheelPack.freePlay.map(() => 0.5) } : {};
        const recorded = {
          profile,
          combination: profile.asSet ?? [],
          // Ten-thousandths are what a line keeps.
          positions: positions.map((position) => position / 1e4),
          start: dial === null ? undefined : { dial, ...slack },
          times_ms,
        };
        return { recorded, as: isWhole ? profile : profile.id };
      }),
  );

  test("and reading give the same attempt", () => {
    fc.assert(
      fc.property(attempts, ({ recorded, as }) => {
        const line = writeAttemptLine(recorded, as);
        expect(line).not.toContain("\n");
        expect(parseAttemptLine(line)).toEqual(recorded);
      }),
    );
  });

  test("rounds positions to ten-thousandths and times to milliseconds", () => {
    const line = writeAttemptLine(
      { profile: whole, combination: [38, 71, 26], positions: [0.1 + 0.2], times_ms: [1.6] },
      "three-wheel",
    );
    expect(JSON.parse(line)).toEqual({
      profile: "three-wheel",
      combination: [38, 71, 26],
      positions: [0.3],
      times_ms: [2],
    });
  });
});
