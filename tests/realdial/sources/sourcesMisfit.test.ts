import fc from "fast-check";
import { expect, test } from "vitest";
import { COARSE_FROM, describeSource, type SourceDescription } from "../../../src/realdial/sources/sourceDescription";
import { SOURCE_KINDS } from "../../../src/realdial/sources/sourceKinds";
import { sourcesMisfit } from "../../../src/realdial/sources/sourcesMisfit";
import { SCREEN_SOURCE, SourcesSeen } from "../../../src/realdial/sources/sourcesSeen";

const ENCODER = describeSource("encoder", 100 / 2400, 0.012);
const MIDI = describeSource("midi", 1.5);

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
])("%s", (_, sources, misfit) => {
  expect(sourcesMisfit(sources)).toBe(misfit);
});

test("whatever a hand takes up in turn, its record can be", () => {
  const source = fc
    .record({
      kind: fc.constantFrom(...SOURCE_KINDS),
      resolution: fc.constantFrom(0.01, 0.4, COARSE_FROM, 1, 4),
      noise: fc.constantFrom(null, 0, 0.02),
    })
    .map(({ kind, resolution, noise }) =>
      kind === "screen" ? SCREEN_SOURCE : describeSource(kind, resolution, noise),
    );
  fc.assert(
    fc.property(fc.array(source, { maxLength: 30 }), (turned) => {
      const seen = new SourcesSeen();
      for (const one of turned) seen.note(one);
      expect(sourcesMisfit(seen.forRecord.sources)).toBeNull();
    }),
  );
});
