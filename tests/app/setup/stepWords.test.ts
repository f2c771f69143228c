import { describe, expect, test } from "vitest";
import { isCoarseHere, limitsText, measuredStep } from "../../../src/app/setup/session/stepWords";
import { describeSource } from "../../../src/realdial/sources/sourceDescription";
import { SOURCE_KINDS } from "../../../src/realdial/sources/sourceKinds";

const NONE = { source: null, remembered: null, perTurn: 100 };

describe("the step of a device, as setup knows it", () => {
  test.each([
    ["not known before it was measured", NONE, null],
    ["of the one that turns the dial", { ...NONE, source: describeSource("midi", 0.2) }, 0.2],
    ["not of another kind that does", { ...NONE, source: describeSource("encoder", 0.2) }, null],
    ["as the last setup found it", { ...NONE, remembered: { resolution: 1.5, perTurn: 100 } }, 1.5],
    ["on a dial of more graduations", { ...NONE, perTurn: 200, remembered: { resolution: 1.5, perTurn: 100 } }, 3],
    ["not what a lost device left", { ...NONE, remembered: { resolution: 0, perTurn: 100 } }, null],
    [
      "as it is now, before what was found",
      { ...NONE, source: describeSource("midi", 0.2), remembered: { resolution: 1.5, perTurn: 100 } },
      0.2,
    ],
  ])("is %s", (_, measured, step) => {
    expect(measuredStep("midi", measured)).toBe(step);
  });

  test("calls coarse what records call coarse, whatever the kind", () => {
    for (const kind of SOURCE_KINDS)
      for (const step of [0.05, 0.49, 0.5, 4])
        expect(isCoarseHere(kind, step)).toBe(describeSource(kind, step).isCoarse);
  });

  test.each([
    ["midi", true],
    ["gamepad", true],
    ["knob-keys", true],
    ["encoder", false],
    ["phone", false],
    ["printed-dial", false],
  ] as const)("of a %s that was not measured is taken for that of its kind: coarse is %s", (kind, isCoarse) => {
    expect(isCoarseHere(kind, null)).toBe(isCoarse);
  });
});

test.each([
  ["midi", null, "Its steps are too large to judge a stop: 1 to 4 graduations."],
  ["midi", 1.5, "Its steps are too large to judge a stop: 1.5 graduations."],
  ["midi", 0.2, "Its steps are small enough to judge a stop: 0.2 graduations."],
  ["gamepad", null, "A thumb on a stick does not stop as a hand on a dial does."],
  [
    "knob-keys",
    0.2,
    "Its steps are small enough to judge a stop: 0.2 graduations. A volume knob may change the volume as well.",
  ],
  ["phone", 0.05, "It drifts a little, and the screen turns with your hand."],
  [
    "encoder",
    4,
    "Its steps are too large to judge a stop: 4.0 graduations. It does not know where its 0 is. You set 0 here, and again each time the board starts.",
  ],
] as const)("limits of a %s with steps of %s graduations", (kind, step, says) => {
  expect(limitsText(kind, step)).toBe(says);
});
