import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Axes, axisMove, learnAxisKnob } from "../../../src/realdial/knobs/axisKnob";

const wrapped = (place: number) => place - 2 * Math.floor((place + 1) / 2);
/** Axes while the second goes from one place to another, and the first trembles. */
const path = (from: number, to: number, steps = 40): Axes[] =>
  Array.from({ length: steps + 1 }, (_, k) => [k % 2 === 0 ? 0 : 0.0005, wrapped(from + ((to - from) * k) / steps)]);
const stick = (): Axes[] => [0, 0.3, 0.9, 0.5, 0].map((x) => [0, x]);

describe("an axis of a game controller", () => {
  test("goes the short way round its end", () => {
    const place = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(place, fc.double({ min: -0.9, max: 0.9, noNaN: true }), (from, by) => {
        expect(axisMove(from, wrapped(from + by))).toBeCloseTo(by, 9);
      }),
    );
  });

  test.each([
    { why: "one run a turn", left: path(0.3, 2.3), right: path(2.3, 0.3), perTurn: 2 },
    { why: "four runs a turn, the other way", left: path(0, -8, 200), right: path(-8, 0, 200), perTurn: -8 },
  ])("is learned with $why", ({ left, right, perTurn }) => {
    const learned = learnAxisKnob(left, right);
    expect(learned).toEqual({ knob: { axis: 1, perTurn: expect.closeTo(perTurn, 9), step: expect.any(Number) } });
    if ("knob" in learned)
      expect(learned.knob.step).toBeCloseTo(Math.abs(perTurn) / (left.length - 1) / Math.abs(perTurn), 9);
  });

  test.each([
    { why: "nothing moved", left: path(0, 0), right: path(0, 0), failed: "nothing" },
    { why: "there was no controller", left: [], right: [], failed: "nothing" },
    { why: "a stick sprang back", left: stick(), right: stick(), failed: "has-ends" },
    { why: "both turns went one way", left: path(0, 2), right: path(0, 2), failed: "same-both-ways" },
    { why: "one turn was longer", left: path(0, 3), right: path(3, 1), failed: "uneven" },
    {
      why: "two axes moved",
      left: path(0, 2).map(([, y = 0]) => [y, y]),
      right: path(2, 0).map(([, y = 0]) => [y, y]),
      failed: "more-than-one",
    },
  ])("is not learned where $why", ({ left, right, failed }) => {
    expect(learnAxisKnob(left, right)).toEqual({ failed });
  });
});
