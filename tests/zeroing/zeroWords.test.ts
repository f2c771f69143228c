import { describe, expect, test } from "vitest";
import { REFUSALS } from "../../src/zeroing/approach";
import { moreReadings } from "../../src/zeroing/moreReadings";
import { markPlay } from "../../src/zeroing/playEstimate";
import { usualRules } from "../../src/zeroing/zeroingRules";
import { lostMotionEstimate, sideResult } from "../../src/zeroing/zeroResult";
import {
  acceptedWords,
  lostMotionWords,
  notSetWords,
  placeWords,
  playWords,
  refusalWords,
  seriesWords,
  verdictWords,
} from "../../src/zeroing/zeroWords";

const RULES = usualRules(100);
const LIMITS = { tolerance: 0.5, risk: 0.05 };

test.each([
  [0, "on zero"],
  [0.2, "0.2 left of zero"],
  [-0.25, "0.3 right of zero"],
  [0.04, "0.04 left of zero"],
  [-0.001, "less than 0.01 right of zero"],
  [1, "1.0 left of zero"],
])("%d is %s", (deviation, words) => {
  expect(placeWords(deviation)).toBe(words);
});

test.each([
  {
    side: "right",
    count: 2,
    wanted: 3,
    deviation: 0.2,
    words: "right stop two of three recorded, 0.2 left of zero",
  },
  { side: "left", count: 3, wanted: 3, deviation: 0, words: "left stop three of three recorded, on zero" },
  {
    side: "left",
    count: 4,
    wanted: 3,
    deviation: -1.2,
    words: "left extra stop four recorded, 1.2 right of zero",
  },
] as const)("an accepted reading is spoken: $words", ({ side, count, wanted, deviation, words }) => {
  expect(acceptedWords(side, count, wanted, deviation)).toBe(words);
});

describe("a refusal", () => {
  test.each([
    { reason: "not-at-rest", says: /still moving.*0\.4 s\./ },
    { reason: "same-stop", says: /already recorded.*right once more/ },
    { reason: "wrong-way", says: /turning left: come to it turning right/ },
    { reason: "came-back", says: /turned back.*turning right only for the last 25 graduations/ },
    { reason: "too-short", says: /too short.*25 graduations/ },
    { reason: "off-the-mark", says: /stopped 2\.0 left of zero.*within 1\.5 graduations count/ },
  ] as const)("for $reason says what was wrong and what to do, in one sentence", ({ reason, says }) => {
    const words = refusalWords(reason, "right", RULES, 2);
    expect(words).toMatch(says);
    expect(words).toMatch(/^[A-Z][^!?]*\.$/);
    expect(words.match(/\.( |$)/g)).toHaveLength(1);
  });

  test("is told for every reason, otherwise for each, and without a deviation", () => {
    const all = REFUSALS.map((reason) => refusalWords(reason, "left", RULES));
    expect(new Set(all).size).toBe(REFUSALS.length);
    for (const words of all) expect(words).not.toMatch(/undefined|NaN/);
    expect(refusalWords("off-the-mark", "left", RULES)).toMatch(/too far from zero/);
  });

  test("tells what it costs where the readings must be made in a row", () => {
    const words = refusalWords("too-short", "right", { ...RULES, consecutive: true });
    expect(words).toMatch(/; the right side starts again\.$/);
  });
});

describe("a verdict", () => {
  test.each([
    { why: "good", values: [0.1, 0.15, 0.05], says: /^Right: accepted\. .*mean 0\.1 left of zero.*99 %\.$/ },
    {
      why: "bad",
      values: [0.8, 0.85, 0.75],
      says: /^Right: rejected\. .*mean 0\.8 left of zero.*no more than the 5 %/,
    },
    {
      why: "open",
      values: [0.35, 0.45, 0.2],
      says: /^Right: not shown yet\. .*95 % is asked for.* (more|one more) stop/,
    },
    { why: "on the limit", values: [0.4, 0.6, 0.5], says: /more stops will not show it/ },
  ])("$why has its reason", ({ values, says }) => {
    expect(verdictWords("right", sideResult(values, LIMITS), LIMITS)).toMatch(says);
  });

  test("never rounds a probability up to the limit it misses", () => {
    const side = { ...sideResult([0.1, 0.2], LIMITS), conformance: 0.9499 };
    expect(verdictWords("left", { ...side, verdict: "not shown yet" }, LIMITS)).toContain("probability of 94 %");
    expect(verdictWords("left", { ...side, conformance: 0.0501, verdict: "not shown yet" }, LIMITS)).toContain("6 %");
    expect(verdictWords("left", { ...side, conformance: 1 - 1e-9, verdict: "accept" }, LIMITS)).toContain(
      "more than 99.9 %",
    );
  });

  test("names as many further readings as would show it", () => {
    const side = sideResult([-0.4, 0.1, 0.45], LIMITS);
    const more = moreReadings(side, LIMITS);
    expect(more).toBeGreaterThan(0);
    const shown = (count: number) => moreReadings({ ...side, n: side.n + count }, LIMITS) === 0;
    expect([shown((more ?? 0) - 1), shown(more ?? 0)]).toEqual([false, true]);
  });
});

test("lost motion is told with its interval, and the truth where it may be known", () => {
  const estimate = lostMotionEstimate({ right: [1.1, 1.2, 1.3], left: [0.1, 0.2, 0.3] });
  expect(lostMotionWords(estimate)).toMatch(/^Lost motion: 1\.00 graduations, 95 % interval 0\.77 to 1\.23\.$/);
  expect(lostMotionWords(estimate, 1.05)).toMatch(/; this lock has 1\.05\.$/);
});

test("a series that was not set says why, and what to do", () => {
  const readings = [0, 0, 1.25, 0, 1.25].map((deviation) => ({ deviation, cam: 0 }));
  expect(notSetWords("left", readings, RULES)).toBe(
    "Not set: after five stops turning left, the last three still lie 1.3 graduations apart; 0.6 is allowed. Start again, and come to zero more slowly.",
  );
});

test("a number for the play is told against the truth", () => {
  const stops = { right: [10, 10.1, 9.9], left: [11, 11.1, 10.9] };
  expect(playWords(markPlay(stops, 100, 1, 1))).toMatch(
    /^You entered 1 graduation; the play is 1\.0: exactly right\. .*is in that range\.$/,
  );
  expect(playWords(markPlay(stops, 100, 1.1, 1))).toMatch(/0\.1 too much/);
  expect(playWords(markPlay(stops, 100, 0.2, 1.9))).toMatch(/too little\. .*is not in that range.*subtract/);
});

test("a side that is open says how many stops it has, how far they spread and when it closes", () => {
  const stops = (...deviations: number[]) => deviations.map((deviation) => ({ deviation, cam: 0 }));
  const rules = { ...usualRules(100), spreadLimit: 0.3 };
  expect(seriesWords("right", stops(0.1, 0.6, 0.3), 3, rules)).toBe(
    "Right side: 3 stops recorded, spread 0.5; it closes when the last 3 lie within 0.3 graduations.",
  );
  expect(seriesWords("left", stops(0.1), 3, rules)).toBe(
    "Left side: 1 stop recorded; 2 more to go, and the last 3 must lie within 0.3 graduations.",
  );
});
