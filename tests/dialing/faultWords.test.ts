import { describe, expect, test } from "vitest";
import { tellFaults, tellFaultsSoFar, type WordedFault } from "../../src/dialing/faultWords";
import type { Graduations } from "../../src/lock/dial";
import { parseProfile } from "../../src/lock/profileSchema";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { COMBINATION, FAULT_TRACES } from "../support/faultTraces";
import { handled } from "../support/handled";

const faultsOf = ({ profile, hand, times }: (typeof FAULT_TRACES)[number]) =>
  tellFaults(handled(shippedProfile(profile), COMBINATION, { hand, times }).attempt);

const messageOf = (id: "three-wheel" | "dial-encoder", hand: readonly Graduations[]) =>
  tellFaults(handled(shippedProfile(id), COMBINATION, { hand }).attempt)[0]?.message ?? "";

const WORDED = FAULT_TRACES.flatMap((trace) =>
  faultsOf(trace).map((fault) => [`${trace.profile}: ${trace.why} (${fault.code})`, fault, trace] as const),
);
const nameOf = ({ number }: WordedFault) => String(COMBINATION[number - 1]);

describe("every message", () => {
  test.each(WORDED)("is made of whole sentences: %s", (_, { message }) => {
    expect(message).toMatch(/^[A-Z].*\.$/);
    expect(message).not.toMatch(/undefined|NaN|null| {2}|\.\.|-\d/);
  });

  test.each(WORDED)("names the number as the face shows it, or the turn: %s", (_, fault) => {
    const isTurn = fault.code === "wrong-way" || fault.code === "not-drawn";
    expect(fault.message).toMatch(isTurn ? /\b(left|right)\b/ : new RegExp(`\\b${nameOf(fault)}\\b`));
  });

  test.each(WORDED)("says what to do next: %s", (_, { message }, { opens }) => {
    expect(message).toMatch(
      opens
        ? /It still opened/
        : /Start over: left again|Keep turning|go round again|Go on|Next: turn|Dial the other numbers first/,
    );
  });
});

describe("a size in a message", () => {
  test.each([
    { hand: [0, 340.5, 71, 226, 190], says: "You ran 2.5 graduations past 38." },
    { hand: [0, 335.5, 71, 226, 190], says: "You stopped 2.5 graduations short of 38." },
    { hand: [0, 100, 99, 96, 338, 71, 226, 190], says: "You turned back 4.0 graduations on the way to 38." },
    { hand: [0, 338, 71, 226, 191], says: "1 graduation to go to the stop" },
    { hand: [0, 238, -29, 126, 90], says: "You arrived only three times at 38; this lock asks for at least four." },
    { hand: [0, 338, 171, 326, 290], says: "You arrived only twice at 71; this lock asks for three." },
    { hand: [0, 338, -29, 126, 90], says: "You arrived four times at 71, where this lock asks for exactly three." },
    { hand: [0, 338], says: "You never came to 71; this lock asks for three arrivals. Next: turn right to 71." },
  ])("$says", ({ hand, says }) => {
    expect(messageOf("three-wheel", hand)).toContain(says);
  });
});

describe("on a wheel pack", () => {
  test("a fourth arrival at the second number tells that wheel 1 was carried along, and how far", () => {
    const message = messageOf("three-wheel", [0, 338, -29, 126, 90]);
    expect(message).toContain("Wheel 1 was carried along and is 33.0 graduations off its gate.");
    expect(message).toContain("Wheel 2 itself is still in line.");
    expect(message).toContain("Start over: left again, at least four arrivals.");
  });

  test("an overrun number tells where its wheel stands, and that going round again does not fix it", () => {
    const message = messageOf("three-wheel", [0, 338, 69, 226, 190]);
    expect(message).toContain("Wheel 2 is 2.0 graduations off its gate.");
    expect(message).toContain("Going round again does not fix it. Start over");
  });

  test("Coming back does not bring the wheel back", () => {
    const times = [0, 9000, 9500, 9900, 15_000, 20_000, 23_000];
    const { attempt } = handled(shippedProfile("three-wheel"), COMBINATION, {
      hand: [0, 340.5, 338, 338, 71, 226, 190],
      times,
    });
    expect(tellFaults(attempt)[0]?.message).toContain("Coming back does not bring wheel 1 back");
  });

  test("a stop off by less than the gate may be tells that the lock opened all the same", () => {
    expect(messageOf("three-wheel", [0, 339.125, 71, 226, 190])).toContain("still within its gate tolerance of 1.25");
  });

  test("a first turn the wrong way is never to be gone on with, even if a wheel stands true by chance", () => {
    expect(messageOf("three-wheel", [0, -362, -129, -274, -160])).toMatch(
      /begins to the left\. Start over: left again/,
    );
  });
});

describe("on an encoder lock", () => {
  test("nothing is said of wheels", () => {
    const messages = FAULT_TRACES.filter(({ profile }) => profile === "dial-encoder").flatMap(faultsOf);
    expect(messages.filter(({ message }) => /wheel/i.test(message))).toEqual([]);
  });

  test("it is too late to go round again once the hand has turned back", () => {
    expect(messageOf("dial-encoder", [0, 340.5, 71, 226, 190])).toContain("it is too late to go round again");
  });

  test("going round again is the thing to do while it has not", () => {
    const profile = shippedProfile("dial-encoder");
    const { attempt } = handled(profile, COMBINATION, { hand: [0, 340.5] });
    expect(tellFaults(attempt)[0]?.message).toContain("go round again, left");
  });

  test("the pause it takes is named", () => {
    const { attempt } = handled(shippedProfile("dial-encoder"), COMBINATION, {
      hand: [0, 9, 9],
      times: [0, 500, 40_000],
    });
    const pause = tellFaults(attempt).find(({ code }) => code === "paused-too-long");
    expect(pause?.message).toMatch(/longer than the 30 seconds.*forgot/);
  });
});

test("a hand that stopped short and has not turned back is told to turn on", () => {
  const { attempt } = handled(shippedProfile("three-wheel"), COMBINATION, { hand: [0, 335] });
  expect(tellFaults(attempt)[0]?.message).toMatch(/3\.0 graduations short of 38\..*Keep turning left to 38\./);
});

test("a face numbered the other way is spoken of by its own numbers", () => {
  const mirrored = parseProfile({ ...shippedProfile("three-wheel"), id: "mirrored", numbersIncrease: "right" });
  // Reading 38 is engraved 62 there.
  const { attempt } = handled(mirrored, COMBINATION, { hand: [0, 340.5, 171] });
  expect(tellFaultsSoFar(attempt)[0]?.message).toContain("past 62");
});
