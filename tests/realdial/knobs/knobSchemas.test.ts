import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type ControllerKnob, learnController } from "../../../src/realdial/knobs/controllerKnob";
import { controllerKnobSchema, keyKnobSchema, midiKnobSchema } from "../../../src/realdial/knobs/knobSchemas";
import { describeSource } from "../../../src/realdial/sources/sourceDescription";
import type { SourceKind } from "../../../src/realdial/sources/sourceKinds";
import { sourcesSchema } from "../../../src/realdial/sources/sourceSchema";
import { sourcesMisfit } from "../../../src/realdial/sources/sourcesMisfit";

const figure = fc.constantFrom(0, -0, 1e-300, 0.005, 0.01, 0.5, 1, -1, 2, 20, -20, 1e6, -1e6, 2e6, 1e308, null, "1");
const place = fc.constantFrom(0, 1, 3, 100, 101, -1, 1.5, 1e308, null);

/** What someone may have written over a learned knob. */
const written = fc.record({
  channel: place,
  controller: place,
  encoding: fc.constantFrom("increment", "twos-complement", "toString"),
  left: fc.constantFrom("a", ""),
  right: fc.constantFrom("b", ""),
  axis: place,
  other: fc.option(place, { nil: undefined }),
  perTurn: figure,
  step: figure,
});

const KNOBS: readonly (readonly [SourceKind, (one: unknown) => number | undefined])[] = [
  ["midi", (one) => stepOf(midiKnobSchema.safeParse(one).data)],
  ["knob-keys", (one) => stepOf(keyKnobSchema.safeParse(one).data)],
  ["gamepad", (one) => controllerKnobSchema.safeParse(one).data?.step],
];
const stepOf = (knob: { readonly perTurn: number } | undefined) => knob && 1 / Math.abs(knob.perTurn);

describe("a knob that was stored is followed only where its record can be read again", () => {
  test.each(KNOBS)("%s", (kind, stepIn) => {
    fc.assert(
      fc.property(written, fc.constantFrom(10, 60, 100, 200), (one, perTurn) => {
        const step = stepIn(one);
        if (step === undefined) return;
        const sources = [describeSource(kind, step * perTurn)];
        expect([sourcesSchema.safeParse(sources).success, sourcesMisfit(sources)]).toEqual([true, null]);
      }),
      { numRuns: 3000 },
    );
  });

  test.each([
    { left: "a", right: "b", perTurn: -20 },
    { left: "a", right: "b", perTurn: 0.01 },
  ])("no steps of keys count backward, nor is one more than a turn: %o", (knob) => {
    expect(keyKnobSchema.safeParse(knob).success).toBe(false);
  });
});

test("a stick that was stored goes round as often as the dial", () => {
  const stick = { axis: 0, other: 1, perTurn: -1, step: 0.01 };
  expect(controllerKnobSchema.safeParse(stick).data).toEqual(stick);
  expect(controllerKnobSchema.safeParse({ ...stick, perTurn: 1000 }).data).not.toHaveProperty("other");
});

test("what is learned can be stored", () => {
  const round = (sign: number) =>
    Array.from({ length: 41 }, (_, k) => [Math.cos((sign * k * Math.PI) / 20), -Math.sin((sign * k * Math.PI) / 20)]);
  const spun = (sign: number) => Array.from({ length: 41 }, (_, k) => [(((((sign * k) / 20 + 1) % 2) + 2) % 2) - 1, 0]);
  for (const turn of [round, spun]) {
    const learned = learnController(turn(1), turn(-1)) as { readonly knob: ControllerKnob };
    expect(controllerKnobSchema.safeParse(JSON.parse(JSON.stringify(learned.knob))).data).toEqual(learned.knob);
  }
});
