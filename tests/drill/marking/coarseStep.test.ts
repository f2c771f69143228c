import { describe, expect, test } from "vitest";
import { faultsCounted, hasFault, isRight } from "../../../src/drill/marking/tryResult";
import { describeSource } from "../../../src/realdial/sources/sourceDescription";
import { dialingStation } from "../../support/testSheet";
import { dialingTry } from "../../support/testTries";

const KNOB = describeSource("midi", 1.5);
const ENCODER = describeSource("encoder", 0.05);
/** Count and order of the first two numbers. */
const FIRST_TWO = dialingStation({ upTo: 2, passMarks: { firstTime: 1 } });

const fault = (code: "ran-past" | "stopped-short" | "too-few-turns" | "wrong-way", size: number) => ({
  ...{ code, number: 1, size },
});

describe("a try turned in coarse steps", () => {
  test.each([
    ["a stop a step past", fault("ran-past", 1.5), true],
    ["a stop less than a step short", fault("stopped-short", 0.7), true],
    ["another number", fault("ran-past", 1.6), false],
    ["a turn too few", fault("too-few-turns", 1), false],
    ["the wrong way", fault("wrong-way", 0.5), false],
  ])("%s: right by count and order %#", (_, made, right) => {
    const turned = dialingTry({ faults: [made], sources: [KNOB] });
    expect(isRight(turned, FIRST_TWO)).toBe(right);
    expect(faultsCounted(turned, FIRST_TWO)).toEqual(right ? [] : [made]);
    expect(hasFault(turned, dialingStation())).toBe(!right);
  });

  test("is the coarse hand's alone: the same stop with a fine one is a fault", () => {
    const made = [fault("ran-past", 1.5)];
    expect(isRight(dialingTry({ faults: made, sources: [ENCODER] }), FIRST_TWO)).toBe(false);
    expect(isRight(dialingTry({ faults: made }), FIRST_TWO)).toBe(false);
    expect(isRight(dialingTry({ faults: made, sources: [ENCODER, KNOB] }), FIRST_TWO)).toBe(true);
  });

  test("never counts where stops are marked to a fraction", () => {
    const fine = dialingStation({ upTo: 2, passMarks: { firstTime: 1, stopErrorBias: 0.5 } });
    expect(isRight(dialingTry({ sources: [KNOB] }), fine)).toBe(false);
    expect(isRight(dialingTry({ sources: [ENCODER] }), fine)).toBe(true);
  });
});
