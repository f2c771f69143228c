import fc from "fast-check";
import { expect, test } from "vitest";
import { COARSE_FROM, describeSource, type SourceDescription } from "../../../src/realdial/sources/sourceDescription";
import { SOURCE_KINDS, type SourceKind } from "../../../src/realdial/sources/sourceKinds";
import { sourcesMisfit, turningMisfit } from "../../../src/realdial/sources/sourcesMisfit";
import { SCREEN_SOURCE, SourcesSeen } from "../../../src/realdial/sources/sourcesSeen";

const ENCODER = describeSource("encoder", 100 / 2400, 0.012);
const MIDI = describeSource("midi", 1.5);

/** The one step, turns, of devices that have but one. */
const ONLY_STEP: Partial<Record<SourceKind, number>> = {
  "printed-dial": 0.0006,
  "ordinary-dial": 0.0006,
  phone: 1 / 3600,
};

test.each<[string, readonly SourceDescription[], ReturnType<typeof sourcesMisfit>]>([
  ["an encoder", [ENCODER], null],
  ["two kinds", [ENCODER, MIDI], null],
  ["one kind, measured anew", [ENCODER, { ...ENCODER, noise: 0.02 }], null],
  ["the screen and another", [SCREEN_SOURCE, ENCODER], null],
  ["none", [], "none-named"],
  ["the screen alone", [SCREEN_SOURCE], "screen-alone"],
  ["one twice", [ENCODER, MIDI, ENCODER], "named-twice"],
  ["no step", [{ ...ENCODER, resolution: 0 }], "no-step"],
  ["a coarse one called fine", [{ ...MIDI, isCoarse: false }], "coarse-unsaid"],
  ["a fine one called coarse", [{ ...ENCODER, isCoarse: true }], "fine-called-coarse"],
  ["an ordinary dial of which no motion is kept", [describeSource("ordinary-dial", 0.06, null, false)], null],
  ["an encoder of which none is", [{ ...ENCODER, keepsNoMotion: true }], "hides-motion"],
  ["a screen of which none is", [ENCODER, { ...SCREEN_SOURCE, keepsNoMotion: true }], "other-screen"],
  ["a screen with other steps", [{ ...SCREEN_SOURCE, resolution: 0.01 }, ENCODER], "other-screen"],
  ["a screen that is coarse", [ENCODER, { ...SCREEN_SOURCE, isCoarse: true }], "other-screen"],
  ["an encoder of four steps a turn", [describeSource("encoder", 25)], null],
  ["one of two", [describeSource("encoder", 200 / 2 + 1)], "other-step"],
  ["one of more steps than its lines can say", [describeSource("encoder", 1e-6)], "other-step"],
  ["a printed dial on the largest dial", [describeSource("printed-dial", 0.12, 0.02)], null],
  ["a printed dial in whole graduations", [describeSource("printed-dial", 1)], "other-step"],
  ["a dial seen finer than a picture is", [describeSource("ordinary-dial", 0.001)], "other-step"],
  ["a phone", [describeSource("phone", 100 / 3600, 0.03)], null],
  ["a phone in steps of a knob", [describeSource("phone", 4)], "other-step"],
  ["a controller that turns in one step", [describeSource("gamepad", 100)], null],
  ["one whose step is more than a turn", [describeSource("gamepad", 201)], "other-step"],
  ["keys of one step in ten turns", [describeSource("knob-keys", 1000)], null],
  ["a MIDI knob finer than any is learned", [describeSource("midi", 1e-9)], "other-step"],
  ["an encoder as noisy as a rest can be", [describeSource("encoder", 0.04, 0.7)], null],
  ["an encoder that is noisier", [describeSource("encoder", 0.04, 0.75)], "too-noisy"],
  ["a coarse knob, quiet within its steps", [describeSource("midi", 25, 25 / Math.sqrt(12))], null],
  ["a coarse knob that is noisier", [describeSource("midi", 25, 8)], "too-noisy"],
])("%s", (_, sources, misfit) => {
  expect(sourcesMisfit(sources)).toBe(misfit);
});

test.each<[string, Parameters<typeof turningMisfit>[0], ReturnType<typeof turningMisfit>]>([
  ["the hands on the screen", {}, null],
  ["a device that lost the hand", { sources: [ENCODER], doubts: ["gap", "hidden"] }, null],
  ["no doubts at all", { doubts: [] }, null],
  ["a doubt of the hands on the screen", { doubts: ["gap"] }, "doubt-without-device"],
  ["a doubt twice", { sources: [ENCODER], doubts: ["gap", "gap"] }, "doubt-twice"],
  ["a list that cannot be", { sources: [], doubts: ["gap"] }, "none-named"],
])("a record of %s", (_, record, misfit) => {
  expect(turningMisfit(record)).toBe(misfit);
});

test("whatever a hand takes up in turn, its record can be", () => {
  const steps = fc.constantFrom(1e-4, 0.004, COARSE_FROM / 100, 0.01, 0.04);
  const source = fc
    .record({
      kind: fc.constantFrom(...SOURCE_KINDS),
      perTurn: fc.constantFrom(10, 100, 200),
      step: steps,
      noise: fc.constantFrom(null, 0, 0.0035),
    })
    .map(({ kind, perTurn, step, noise }) =>
      kind === "screen"
        ? SCREEN_SOURCE
        : describeSource(kind, (ONLY_STEP[kind] ?? step) * perTurn, noise === null ? null : noise * perTurn),
    );
  fc.assert(
    fc.property(fc.array(source, { maxLength: 30 }), (turned) => {
      const seen = new SourcesSeen();
      for (const one of turned) seen.note(one);
      expect(sourcesMisfit(seen.forRecord.sources)).toBeNull();
    }),
  );
});
