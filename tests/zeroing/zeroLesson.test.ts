import { describe, expect, test } from "vitest";
import { REFUSALS, type Refusal } from "../../src/zeroing/approach";
import { usualRules } from "../../src/zeroing/zeroingRules";
import { zeroLessons } from "../../src/zeroing/zeroLesson";
import { sideResult } from "../../src/zeroing/zeroResult";

const RULES = usualRules(100);
const EVEN = [0.01, -0.02, 0.02];

function lessons(right: readonly number[], left: readonly number[], reasons: Partial<Record<Refusal, number>> = {}) {
  const none = Object.fromEntries(REFUSALS.map((reason) => [reason, 0])) as Record<Refusal, number>;
  const sides = { right: sideResult(right, RULES), left: sideResult(left, RULES) };
  return zeroLessons({ sides, reasons: { ...none, ...reasons } }, RULES);
}

const around = (mean: number) => EVEN.map((value) => value + mean);

describe("what to do better", () => {
  test.each([
    { why: "nothing", right: EVEN, left: EVEN, says: [/^Even stops/] },
    {
      why: "short from the right",
      right: around(0.3),
      left: EVEN,
      says: [/Turning right .* left of zero .* 0\.3 graduations short/],
    },
    {
      why: "past from the right",
      right: around(-0.3),
      left: EVEN,
      says: [/Turning right .* right of zero .* 0\.3 graduations past/],
    },
    { why: "past from the left", right: EVEN, left: around(0.3), says: [/Turning left .* left of zero .* past/] },
    { why: "short from the left", right: EVEN, left: around(-0.3), says: [/Turning left .* right of zero .* short/] },
    { why: "short from both", right: around(0.3), left: around(-0.3), says: [/right .* short/, /left .* short/] },
    {
      why: "left of zero from both",
      right: around(0.3),
      left: around(0.2),
      says: [/Turning either way, .* left of zero.*straight on/],
    },
    {
      why: "right of zero from both",
      right: around(-0.3),
      left: around(-0.2),
      says: [/Turning either way, .* right of zero/],
    },
    { why: "a lean too small to matter", right: around(0.05), left: EVEN, says: [/^Even stops/] },
    {
      why: "a lean its interval does not show",
      right: [0.3, -0.1, 0.2],
      left: EVEN,
      says: [/^Your stops lean to neither side/],
    },
    { why: "uneven", right: [0.6, -0.6, 0], left: EVEN, says: [/Turning right your stops lie 0\.6 graduations apart/] },
  ])("$why", ({ right, left, says }) => {
    const told = lessons(right, left);
    expect(told).toEqual(says.map((pattern) => expect.stringMatching(pattern)));
  });

  test("a miss that was made once is no habit", () => {
    expect(lessons(EVEN, EVEN, { "too-short": 1 })).toEqual([expect.stringMatching(/^Even stops/)]);
  });

  test.each(REFUSALS)("%s, made again and again, is one", (reason) => {
    expect(lessons(EVEN, EVEN, { [reason]: 3 })).toEqual([expect.stringMatching(/^You .*, three times: .*\.$/)]);
  });

  test("the worse habit comes first, after what the stops show", () => {
    expect(lessons(around(0.3), EVEN, { "too-short": 2, "came-back": 4 })).toEqual([
      expect.stringMatching(/^Turning right/),
      expect.stringMatching(/turned back, four times/),
      expect.stringMatching(/too late, twice/),
    ]);
  });
});
