import { describe, expect, test } from "vitest";
import { keyStep, learnKeyKnob } from "../../../src/realdial/knobs/keyKnob";

const keys = (key: string, times: number) => Array.from({ length: times }, () => key);

describe("a knob that presses keys", () => {
  test("is learned by a turn each way, and followed", () => {
    const learned = learnKeyKnob(keys("AudioVolumeDown", 30), keys("AudioVolumeUp", 31));
    const knob = { left: "AudioVolumeDown", right: "AudioVolumeUp", perTurn: 30.5 };
    expect(learned).toEqual({ knob });
    expect(["AudioVolumeDown", "AudioVolumeUp", "a"].map((key) => keyStep(knob, key))).toEqual([1, -1, 0]);
  });

  test.each([
    { why: "nothing came", left: [], right: keys("a", 3), failed: "nothing" },
    { why: "both ways press one key", left: keys("a", 20), right: keys("a", 20), failed: "same-both-ways" },
    {
      why: "other keys were pressed",
      left: [...keys("a", 20), ...keys("c", 5)],
      right: keys("b", 20),
      failed: "more-than-one",
    },
    { why: "one turn was longer", left: keys("a", 20), right: keys("b", 30), failed: "uneven" },
  ])("is not learned where $why", ({ left, right, failed }) => {
    expect(learnKeyKnob(left, right)).toEqual({ failed });
  });
});
