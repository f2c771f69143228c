import { describe, expect, test } from "vitest";
import { type CutawayView, cutawayView } from "../../../../src/app/pictures/cutaway/cutawayView";
import { errorWords, leverSentences, wheelSentence } from "../../../../src/app/pictures/cutaway/cutawayWords";
import { encoderRegisters, registerSentence } from "../../../../src/app/pictures/cutaway/encoderView";
import { leverPose } from "../../../../src/app/pictures/cutaway/leverPose";
import { packAngles } from "../../../../src/app/pictures/cutaway/packAngles";
import { Attempt } from "../../../../src/dialing/attempt";
import { idealMotion } from "../../../../src/dialing/idealMotion";
import type { Graduations } from "../../../../src/lock/dial";
import type { Profile } from "../../../../src/lock/profile";
import { parseProfile } from "../../../../src/lock/profileSchema";
import { shippedProfile } from "../../../../src/lock/shippedProfiles";
import { packProfile } from "../../../lock/testPacks";

const THREE = shippedProfile("three-wheel");
const COMBINATION = [33, 67, 46];

/** An attempt from dial 0, moved by each of these. */
function turned(profile: Profile, combination: readonly number[], moves: readonly Graduations[]): Attempt {
  const attempt = new Attempt(profile, combination, { dial: 0 });
  for (const move of moves) attempt.turnBy(move);
  return attempt;
}

/** The moves of a perfect hand up to the end of so many runs. */
function perfectMoves(profile: Profile, combination: readonly number[], runs: number, errors: number[] = []) {
  const path = idealMotion(profile, combination, 0, errors);
  return path.slice(1, runs + 1).map((to, k) => to - (path[k] ?? 0));
}

const drivenOf = ({ wheels }: CutawayView) => wheels.map(({ driven }) => driven);
const truthOf = ({ wheels }: CutawayView) => wheels.map(({ isTrue }) => isTrue);

describe("which joint drives", () => {
  test.each([
    { moves: [], driven: [null, null, null], why: "nothing has turned" },
    { moves: [10], driven: ["left", "left", "left"], why: "every wheel rests on its driver" },
    { moves: [400, -10], driven: [null, null, null], why: "the cam has play to take up" },
    { moves: [400, -100], driven: [null, null, "right"], why: "a turn takes up the play of one joint" },
    { moves: [400, -250], driven: [null, "right", "right"], why: "two turns, two joints" },
    { moves: [400, -300], driven: ["right", "right", "right"], why: "three turns, every joint" },
    { moves: [400, -300, 10, -5], driven: [null, null, null], why: "joints met behind one that is not carry nothing" },
    {
      moves: [400, -0.5],
      driven: [null, null, null],
      why: "a wobble belongs to the run, and takes the cam off the wheel",
    },
  ])("$moves: $why", ({ moves, driven }) => {
    const view = cutawayView(turned(THREE, COMBINATION, moves));
    expect(drivenOf(view)).toEqual(driven);
    expect(view.cam.driving).toBe(driven.at(-1));
  });
});

describe("gates, nose and bolt along a perfect dialing", () => {
  test.each([
    { runs: 1, extra: 0, isTrue: [true, false, false], isNoseDown: false, retraction: 0 },
    { runs: 2, extra: 0, isTrue: [true, true, false], isNoseDown: false, retraction: 0 },
    { runs: 3, extra: 0, isTrue: [true, true, true], isNoseDown: false, retraction: 0 },
    { runs: 3, extra: -40, isTrue: [true, true, true], isNoseDown: false, retraction: 0 },
    { runs: 3, extra: -47, isTrue: [true, true, true], isNoseDown: true, retraction: 6 / 15 },
    { runs: 4, extra: 0, isTrue: [true, true, true], isNoseDown: true, retraction: 1 },
  ])("$runs runs and $extra", ({ runs, extra, isTrue, isNoseDown, retraction }) => {
    const view = cutawayView(turned(THREE, COMBINATION, [...perfectMoves(THREE, COMBINATION, runs), extra]));
    expect(truthOf(view)).toEqual(isTrue);
    expect(view.isNoseDown).toBe(isNoseDown);
    expect(view.retraction).toBeCloseTo(retraction, 9);
  });
});

describe("packs of every size", () => {
  const cases = [2, 3, 4, 5, 6].flatMap((count) => [60, 100, 120].map((perTurn) => ({ count, perTurn })));
  test.each(cases)("$count wheels, $perTurn graduations: all true when dialed", ({ count, perTurn }) => {
    const profile = packProfile({ freePlay: Array.from({ length: count }, () => perTurn), perTurn });
    const combination = Array.from({ length: count }, (_, k) => 10 + ((17 * k) % (perTurn - 25)));
    const view = cutawayView(turned(profile, combination, perfectMoves(profile, combination, count)));
    expect(truthOf(view)).toEqual(combination.map(() => true));
    expect(view.wheels.map(({ wheel }) => wheel)).toEqual(combination.map((_, k) => k + 1));
    expect(view.wheels.map(({ stand, number }) => Math.abs(stand - Number(number)) < 1e-9)).not.toContain(false);
  });
});

describe("words", () => {
  const right = parseProfile({ ...THREE, numbersIncrease: "right" });

  test.each([
    { profile: THREE, error: 0.4, words: "+0.4, in the gate" },
    { profile: THREE, error: -0.4, words: "−0.4, in the gate" },
    { profile: THREE, error: 0.04, words: "0.0, in the gate" },
    { profile: THREE, error: 12.3, words: "12.3 off" },
    { profile: right, error: 0.4, words: "−0.4, in the gate" },
  ])("first stop $error past: $words", ({ profile, error, words }) => {
    const { wheels, numbersIncrease } = cutawayView(
      turned(profile, COMBINATION, perfectMoves(profile, COMBINATION, 1, [error])),
    );
    expect(wheels.slice(0, 1).map((wheel) => errorWords(wheel, numbersIncrease).join(" "))).toEqual([words]);
  });

  test("numbers and readings are those of the face", () => {
    const view = cutawayView(turned(right, COMBINATION, [7.5]));
    expect(view.wheels.map(({ number }) => number)).toEqual(["67", "33", "54"]);
    expect(view.cam.reading).toBe("92.5");
  });

  test("a reading of a dial turned far right is a reading still", () => {
    expect(cutawayView(turned(THREE, COMBINATION, [-177.1])).cam.reading).toBe("22.9");
  });

  test("sentences for a screen reader", () => {
    const moves = [...perfectMoves(THREE, COMBINATION, 1, [0.4]), -254.8];
    const view = cutawayView(turned(THREE, COMBINATION, moves));
    expect(view.wheels.map((wheel) => wheelSentence(wheel, "left"))).toEqual([
      "wheel 1, number 33: at rest, +0.4, in the gate",
      "wheel 2, number 67: driven right, 11.6 off its gate",
      "wheel 3, number 46: driven right, 32.6 off its gate",
    ]);
    expect(leverSentences(view)).toEqual([
      "cam at 78.6: driving right",
      "lever nose on the cam, fence above the wheels",
      "bolt thrown",
    ]);
  });
});

describe("geometry", () => {
  test.each([
    { freePlay: 100, why: "a movable fly" },
    { freePlay: 97, why: "a fixed pin" },
    { freePlay: 60, why: "a wide pin" },
  ])("$why: a drive pin keeps clear of the fly within the play, and touches it at both ends", ({ freePlay }) => {
    const profile = packProfile({ freePlay: [freePlay, freePlay] });
    const gaps = [0, 0.25, 0.5, 0.75, 1].map((part) => {
      const start = { dial: 0, slack: [0, part * freePlay] };
      const [, last] = packAngles(cutawayView(new Attempt(profile, [20, 60], start)));
      return last === undefined ? Number.NaN : last.fly - last.pin;
    });
    const touching = gaps[0] ?? 0;
    expect(gaps.at(-1)).toBeCloseTo(360 - touching, 9);
    expect(gaps.toSorted((a, b) => a - b)).toEqual(gaps);
  });

  test.each([
    { fall: 0, angle: 0 },
    { fall: 13, angle: 0 },
  ])("a fall of $fall alone does not move the bolt", ({ fall, angle }) => {
    expect(leverPose(fall, angle).boltShift).toBeCloseTo(0, 9);
  });

  test("the bolt comes along with the cam", () => {
    const shifts = [0, 15, 30, 54].map((angle) => leverPose(13, angle).boltShift);
    expect(shifts.toSorted((a, b) => a - b)).toEqual(shifts);
    expect(shifts.at(-1)).toBeGreaterThan(20);
  });
});

describe("an encoder lock", () => {
  const profile = shippedProfile("dial-encoder");
  const combination = [43, 16, 58];

  test("has no wheels", () => {
    expect(cutawayView(new Attempt(profile, combination, { dial: 0 })).wheels).toEqual([]);
  });

  test.each([
    { runs: 0, errors: [], states: ["to come", "to come", "to come"], counted: [0, 0, 0] },
    { runs: 1, errors: [], states: ["counting", "to come", "to come"], counted: [4, 0, 0] },
    { runs: 3, errors: [0, 2.4], states: ["on", "off", "counting"], counted: [4, 3, 2] },
    { runs: 4, errors: [], states: ["on", "on", "on"], counted: [4, 3, 2] },
  ])("after $runs runs with stop errors $errors", ({ runs, errors, states, counted }) => {
    const registers = encoderRegisters(turned(profile, combination, perfectMoves(profile, combination, runs, errors)));
    expect(registers.map(({ state }) => state)).toEqual(states);
    expect(registers.map((register) => register.counted)).toEqual(counted);
  });

  test("its words give no reading away", () => {
    const registers = encoderRegisters(turned(profile, combination, perfectMoves(profile, combination, 4)));
    expect(registers.map(registerSentence)).toEqual([
      "number 1, left: 4 of at least 4 arrivals, stopped on it",
      "number 2, right: 3 of at least 3 arrivals, stopped on it",
      "number 3, left: 2 of at least 2 arrivals, stopped on it",
    ]);
  });
});
