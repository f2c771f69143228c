import { describe, expect, test } from "vitest";
import { addressOf, benchAddress, unknownSettings } from "../../../../src/app/exercises/bench/benchAddress";
import { lockNote, verdictOf } from "../../../../src/app/exercises/bench/lockNote";
import { faultsWithoutFigures } from "../../../../src/app/hand/faultsWithoutFigures";
import { hubStrength, OPENINGS, oneMoreOpening } from "../../../../src/app/hand/hubReading";
import { spokenSpinOff } from "../../../../src/app/hand/spinOffWords";
import { resultRows } from "../../../../src/app/replay/resultRows";
import { Attempt } from "../../../../src/dialing/attempt";
import { tellFaults } from "../../../../src/dialing/faultWords";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";

const DIGITS_WITH_A_POINT = /\d\.\d/;

/** The three-wheel lock at 38-71-26, dialed 3 graduations past 71. */
function overrun(): Attempt {
  const attempt = new Attempt(shippedProfile("three-wheel"), [38, 71, 26], { dial: 0 });
  for (const to of [338, 68, 126, 90]) attempt.turnBy(to - attempt.dial);
  return attempt;
}

describe("the digits in the hub", () => {
  test("are there for three openings, pale for three more, then gone", () => {
    expect([0, 2, 3, 5, 6, 9].map((openings) => hubStrength(openings, "by lesson"))).toEqual([
      "shown",
      "shown",
      "faint",
      "faint",
      "hidden",
      "hidden",
    ]);
  });

  test("come and go as one asks", () => {
    expect(hubStrength(9, "shown")).toBe("shown");
    expect(hubStrength(0, "hidden")).toBe("hidden");
  });

  test("the count of openings ends where it makes no difference any more", () => {
    const after = OPENINGS.map(oneMoreOpening);
    expect(after).toEqual(["1", "2", "3", "4", "5", "6", "6"]);
    expect(hubStrength(6, "by lesson")).toBe(hubStrength(60, "by lesson"));
  });
});

describe("without figures", () => {
  test("a fault has its name and its number, and no size", () => {
    const faults = faultsWithoutFigures(tellFaults(overrun()));
    expect(faults.length).toBeGreaterThan(0);
    expect(faults[0]?.message).toBe("Ran past at number 2.");
    for (const { message } of faults) expect(message).not.toMatch(DIGITS_WITH_A_POINT);
  });

  test("a row of the result says which way a stop was off, and not how far", () => {
    const [, told] = resultRows(overrun());
    const [, untold] = resultRows(overrun(), false);
    expect(told).toMatchObject({ stopError: "+3.0 past" });
    expect(untold).toMatchObject({ arrivals: told?.arrivals, stopError: "past", wheel: "off its gate" });
  });
});

describe("the line above the dial", () => {
  const opened = { opened: true, time_ms: 9000, faults: [], stood: overrun(), worstStop: 0 };
  const scene = { outcome: null, waiting_s: 0, isLive: true, isAsked: false };

  test("says how an attempt ended until the lock is spun off", () => {
    expect(verdictOf("open", opened)).toBe("opened");
    expect(verdictOf("failed", { ...opened, opened: false })).toBe("failed");
    expect(verdictOf("thrown", opened)).toBeNull();
    expect(verdictOf("turning", null)).toBeNull();
  });

  test("says it also where an estimate is asked for, and where the lock waits", () => {
    expect(lockNote({ ...scene, outcome: opened, isAsked: true })).toMatch(/^It opened\. How far off/);
    expect(lockNote({ ...scene, outcome: { ...opened, opened: false }, waiting_s: 12 })).toBe(
      "It did not open. Wrong-try delay: 12 s left.",
    );
    expect(lockNote({ ...scene, waiting_s: 12 })).toBe("Wrong-try delay: 12 s left.");
    expect(lockNote(scene)).toBeNull();
  });
});

describe("a spin-off said aloud", () => {
  const spinOff = { turn: "left", turnsWanted: 4, turnsMade: 0.6, turnsLeft: 3.4, source: "" } as const;

  test("counts whole turns and names the wheels", () => {
    expect(spokenSpinOff({ ...spinOff, wheelsStanding: [1, 2, 3] }, true)).toBe(
      "Not secure yet. Keep turning left, four more turns. Wheels 1, 2 and 3 are still at their numbers.",
    );
    expect(spokenSpinOff({ ...spinOff, turnsLeft: 0.2, wheelsStanding: [1] }, true)).toBe(
      "Not secure yet. Keep turning left, one more turn. Wheel 1 is still at its number.",
    );
    expect(spokenSpinOff({ ...spinOff, wheelsStanding: [] }, true)).toMatch(/No wheel is at the combination now\.$/);
  });

  test("speaks of no wheels where there are none", () => {
    expect(spokenSpinOff({ ...spinOff, wheelsStanding: [] }, false)).toBe(
      "Not secure yet. Keep turning left, four more turns.",
    );
  });
});

describe("an index and a play that an address asks for", () => {
  const asked = (query: string) => benchAddress(new URLSearchParams(query), { help: "full", seed: 1 });

  test.each([
    ["index=-0.75", { indexOffset: -0.75, lostMotion: 0 }],
    ["play=1.5", { indexOffset: 0, lostMotion: 1.5 }],
    ["index=0&play=0", undefined],
  ])("%s is on the bench, and in its address again", (query, fit) => {
    const { setup, problems } = asked(query);
    expect([setup.fit, problems]).toEqual([fit, []]);
    expect(asked(addressOf(setup)?.split("?")[1] ?? "").setup.fit).toEqual(fit);
  });

  test.each(["index=60", "index=far", "play=-1", "play="])("%s is none, and the page says so", (query) => {
    const { setup, problems } = asked(query);
    expect(setup.fit).toBeUndefined();
    expect(problems).toEqual([expect.stringMatching(/which is not a size from .* graduations. This page uses 0.$/)]);
  });
});

describe("a bench address", () => {
  const problemsOf = (query: string) => benchAddress(new URLSearchParams(query), { help: "full", seed: 1 }).problems;

  test("that asks for what there is has no problems", () => {
    expect(problemsOf("profile=two-wheel&combination=74-37&help=counts&dial=heavy&seed=5")).toEqual([]);
    expect(problemsOf("")).toEqual([]);
  });

  test("may ask for every fit that there is", () => {
    const query = "index=0.5&play=1&round=0.3,40&catch=2,50,10";
    expect(problemsOf(query)).toEqual([]);
    expect(unknownSettings(new URLSearchParams(query))).toEqual([]);
    expect(unknownSettings(new URLSearchParams("rond=1"))).toHaveLength(1);
  });

  test("says of every bad part what is wrong, and what is used instead", () => {
    const problems = problemsOf("profile=x&help=y&dial=z&seed=s&combination=1-2");
    expect(problems).toHaveLength(5);
    for (const problem of problems)
      expect(problem).toMatch(/^The address asks for the .*(the bench uses|The bench uses)/);
  });
});
