import { describe, expect, test } from "vitest";
import { createActor } from "xstate";
import { adviceFor, type Help } from "../../src/dialing/advice";
import { Attempt } from "../../src/dialing/attempt";
import { dialingMachine } from "../../src/dialing/dialingMachine";
import { progressOf } from "../../src/dialing/progress";
import type { Graduations } from "../../src/lock/dial";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { COMBINATION } from "../support/faultTraces";
import { handled } from "../support/handled";

type Id = "three-wheel" | "dial-encoder";

/** A lock dialed 38-71-26, and what its chart says of the hand. */
function scene(id: Id, hand: readonly Graduations[]) {
  const profile = shippedProfile(id);
  const { attempt, facts } = handled(profile, COMBINATION, { hand });
  const chart = createActor(dialingMachine(profile)).start();
  for (const fact of facts) chart.send(fact);
  return { attempt, state: chart.getSnapshot().value };
}

const told = (id: Id, hand: readonly Graduations[], help: Help) => {
  const { attempt, state } = scene(id, hand);
  return adviceFor(attempt, state, help);
};

describe("full help", () => {
  test.each([
    {
      why: "at the start, which way and how often",
      hand: [0],
      turn: "left",
      says: [/turn left/, /four arrivals at 38/],
    },
    { why: "the wrong way, the right one", hand: [0, -20], turn: "left", says: [/Other way/, /turn left/] },
    {
      why: "on the way, how often to pass and how far it is",
      hand: [0, 5],
      turn: "left",
      says: [/left/, /Pass 38 three times/, /33\.0 graduations to go/, /of four arrivals made/],
    },
    { why: "with two to go, once more", hand: [0, 145], turn: "left", says: [/Pass 38 once/, /two of four/] },
    { why: "before the last arrival, to stop", hand: [0, 300], turn: "left", says: [/is your stop/, /three of four/] },
    { why: "on the number, the next way and number", hand: [0, 338], turn: "right", says: [/Stop/, /right to 71/] },
    {
      why: "past the first number, to go round again",
      hand: [0, 340.5],
      turn: "left",
      says: [/2\.5 past 38/, /go round again, left/, /fifth arrival/],
    },
    {
      why: "past the second number, to start over, and what it did to the wheel",
      hand: [0, 338, 69],
      turn: "left",
      says: [/2\.0 past 71/, /Start over: turn left/, /wheel 2 is now 2\.0 graduations off its gate/],
    },
    { why: "on the last number, to draw", hand: [0, 338, 71, 226], turn: "right", says: [/turn right to the stop/] },
    {
      why: "in the draw, how far it is",
      hand: [0, 338, 71, 226, 220],
      turn: "right",
      says: [/right/, /30\.0 graduations to the stop/],
    },
    {
      why: "with the nose down, that the bolt comes",
      hand: [0, 338, 71, 226, 203],
      turn: "right",
      says: [/bolt is coming/],
    },
    {
      why: "after a refusal, to start over",
      hand: [0, 338, 69, 226, 180],
      turn: "left",
      says: [/Start over: turn left/],
    },
    {
      why: "when open, to throw the bolt and spin off",
      hand: [0, 338, 71, 226, 190],
      turn: "left",
      says: [/Open/, /left/],
    },
    {
      why: "with the bolt thrown, that it is not secure yet",
      hand: [0, 338, 71, 226, 190, 210],
      turn: "left",
      says: [/3\.8 turns to go/],
    },
    { why: "when secured, nothing to turn", hand: [0, 338, 71, 226, 190, 610], turn: null, says: [/Secured/] },
  ] as const)("says $why", ({ hand, turn, says }) => {
    const advice = told("three-wheel", hand, "full");
    expect(advice?.turn).toBe(turn);
    for (const words of says) expect(`${advice?.say} ${advice?.detail}`).toMatch(words);
  });

  test("lets an encoder lock go round again at every number", () => {
    for (const hand of [
      [0, 340.5],
      [0, 338, 69],
      [0, 338, 71, 228],
    ]) {
      expect(told("dial-encoder", hand, "full")?.say).toMatch(/go round again/);
    }
  });
});

describe("help with counts only", () => {
  test.each([
    { why: "names number and count while turning", hand: [0, 300], say: "Three of four at number 1." },
    { why: "the same when on the number", hand: [0, 338, 71], say: "Three of three at number 2." },
    { why: "the same when past it, and no more", hand: [0, 338, 69], say: "Three of three at number 2." },
  ])("$why", ({ hand, say }) => {
    expect(told("three-wheel", hand, "counts")).toEqual({ turn: null, say, detail: "" });
  });

  test.each([{ hand: [0] }, { hand: [0, -20] }])(
    "says before the first turn what will be counted: $hand",
    ({ hand }) => {
      expect(told("three-wheel", hand, "counts")?.say).toBe("No arrival yet at number 1. Four needed.");
    },
  );

  test.each([{ hand: [0, 338, 71, 226, 220] }, { hand: [0, 338, 71, 226, 190] }])(
    "says nothing where nothing is counted: $hand",
    ({ hand }) => {
      expect(told("three-wheel", hand, "counts")).toBeNull();
    },
  );
});

test("silent help says nothing anywhere", () => {
  const hand = [0, -20, 318, 71, 226, 190, 610];
  hand.forEach((_, i) => {
    expect(told("three-wheel", hand.slice(0, i + 1), "silent")).toBeNull();
  });
});

describe("progress", () => {
  test.each([
    { why: "before the first turn", hand: [0], step: 0, arrivals: [0, 0, 0], toGo: 38 },
    { why: "arrivals made, and the way to the next", hand: [0, 300], step: 0, arrivals: [3, 0, 0], toGo: 38 },
    { why: "on a number, a whole turn to the next arrival", hand: [0, 338], step: 0, arrivals: [4, 0, 0], toGo: 100 },
    { why: "the way is along the turn", hand: [0, 338, 300], step: 1, arrivals: [4, 0, 0], toGo: 29 },
    { why: "in the draw, the way to the stop", hand: [0, 338, 71, 226, 220], step: 3, arrivals: [4, 3, 2], toGo: 30 },
    { why: "at the stop, none", hand: [0, 338, 71, 226, 190], step: 3, arrivals: [4, 3, 2], toGo: 0 },
  ])("$why", ({ hand, step, arrivals, toGo }) => {
    expect(progressOf(scene("three-wheel", hand).attempt)).toEqual({ step, arrivals, toGo });
  });
});

describe("a mistake behind the hand", () => {
  const packs = { profile: shippedProfile("three-wheel"), combination: [38, 71, 26] };

  test("is told as soon as the lock can no longer open, with the wheel it spoiled", () => {
    const attempt = new Attempt(packs.profile, packs.combination, { dial: 0 });
    for (const by of [341, -50]) attempt.turnBy(by);
    const advice = adviceFor(attempt, "turning", "full");
    expect(advice?.say).toBe("This will not open. Start over: turn left, at least four arrivals at 38.");
    expect(advice?.detail).toBe("wheel 1 is 3.0 graduations off its gate");
    expect(advice?.turn).toBe("left");
  });

  test("is not held against the hand while the gate still takes it", () => {
    const attempt = new Attempt(packs.profile, packs.combination, { dial: 0 });
    for (const by of [339.2, -50]) attempt.turnBy(by);
    expect(adviceFor(attempt, "turning", "full")?.say).toMatch(/^Keep turning right/);
  });

  test("spoils an encoder lock's entry as well", () => {
    const attempt = new Attempt(shippedProfile("dial-encoder"), [38, 71, 26], { dial: 0 });
    for (const by of [341, -50]) attempt.turnBy(by);
    expect(adviceFor(attempt, "turning", "full")?.detail).toBe("this entry is wrong");
  });
});

test("the mark that a turn starts on is not the next arrival", () => {
  const attempt = new Attempt(shippedProfile("three-wheel"), [38, 71, 26], { dial: 37.5 });
  attempt.turnBy(0.25);
  expect(progressOf(attempt).toGo).toBe(100.25);
});

describe("one arrival too many is said at once as what it is", () => {
  const dialed = (hand: readonly number[]) => adviceFor(scene("three-wheel", hand).attempt, "overrun", "full");

  test.each([
    { why: "a fourth arrival at the second number", hand: [0, 338, -29] },
    { why: "stopped just before it", hand: [0, 338, -28.2] },
    { why: "and a little beyond it", hand: [0, 338, -32] },
  ])("$why", ({ hand }) => {
    expect(dialed(hand)?.say).toBe(
      "Fourth arrival at 71: it carried wheel 1 along. Start over: turn left, at least four arrivals at 38.",
    );
    expect(dialed(hand)?.detail).toBe("this lock asks for exactly three arrivals at 71");
  });

  test("a third arrival at the third number, with the wheels that it carried", () => {
    expect(dialed([0, 338, 71, 326])?.say).toMatch(/^Third arrival at 26: it carried wheels? .* along\. Start over: /);
  });

  test("whatever number and turn, it never says 0.0", () => {
    for (const beyond of [-1, -0.5, 0, 0.04, 0.5, 1]) {
      for (const hand of [
        [0, 338, -29 - beyond],
        [0, 338, 71, 326 + beyond],
      ]) {
        const advice = dialed(hand);
        expect(`${advice?.say} ${advice?.detail}`).not.toMatch(/\b0\.0\b/);
      }
    }
  });
});

test("once an encoder lock's entry is wrong, a new first turn is counted at the first number, and the turn after it at the second", () => {
  const told = (hand: readonly number[]) => adviceFor(scene("dial-encoder", hand).attempt, "turning", "full")?.say;
  expect(told([0, 341, 66, 100])).toBe("Keep turning left. Pass 38 three times, then stop on it.");
  expect(told([0, 341, 66, 430])).toBe("Keep turning left. Next arrival at 38 is your stop.");
  expect(told([0, 341, 66, 438])).toBe("Stop here. Now turn right to 71.");
  expect(told([0, 341, 66, 438, 410])).toBe("Keep turning right. Pass 71 twice, then stop on it.");
  expect(told([0, 341, 66, 438, 380])).toBe("Keep turning right. Pass 71 twice, then stop on it.");
});
