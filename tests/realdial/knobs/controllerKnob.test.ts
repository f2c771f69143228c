import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Axes } from "../../../src/realdial/knobs/axisKnob";
import { controllerMove, learnController } from "../../../src/realdial/knobs/controllerKnob";
import { controllerKnobSchema } from "../../../src/realdial/knobs/knobSchemas";

/** A controller whose second stick stands at an angle, turns, left positive; its first stick trembles. */
const at = (turns: number, reach = 1): Axes => [
  0.001 * Math.sin(99 * turns),
  0,
  reach * Math.cos(2 * Math.PI * turns),
  -reach * Math.sin(2 * Math.PI * turns),
];
const round = (by: number, from = 0.13): Axes[] => Array.from({ length: 61 }, (_, k) => at(from + (by * k) / 60));

const STICK = { axis: 2, other: 3, perTurn: 1, step: 0.01 };

describe("a stick that is turned round its rim", () => {
  test("is learned by a turn each way, from its middle too", () => {
    const learned = learnController([at(0, 0), ...round(1)], [...round(-1), at(0.13, 0)]);
    expect(learned).toEqual({ knob: { axis: 2, other: 3, perTurn: 1, step: expect.closeTo(1 / 60, 6) } });
    if ("knob" in learned)
      expect(controllerKnobSchema.parse(JSON.parse(JSON.stringify(learned.knob)))).toEqual(learned.knob);
  });

  test.each([
    ["half a turn", round(0.5), round(-0.5)],
    ["both ways the same", round(1), round(1)],
    ["pushed and let go", [at(0, 0), at(0), at(0, 0)], [at(0, 0), at(0.5), at(0, 0)]],
  ])("is not learned by %s", (_, left, right) => {
    expect(learnController(left, right)).toHaveProperty("failed");
  });

  test("turns by its angle, the short way, whatever its reach", () => {
    const turns = fc.double({ min: -1, max: 1, noNaN: true });
    const by = fc.double({ min: -0.49, max: 0.49, noNaN: true });
    const reach = fc.double({ min: 0.61, max: 1, noNaN: true });
    fc.assert(
      fc.property(turns, by, reach, (from, move, far) => {
        expect(controllerMove(STICK, at(from), at(from + move, far))).toBeCloseTo(move, 9);
        expect(controllerMove({ ...STICK, perTurn: -1 }, at(from), at(from + move, far))).toBeCloseTo(-move, 9);
      }),
    );
  });

  test("turns nothing where it was let go of", () => {
    expect(controllerMove(STICK, at(0.1), at(0.3, 0.4))).toBe(0);
    expect(controllerMove(STICK, at(0.1, 0.4), at(0.3))).toBe(0);
  });
});
