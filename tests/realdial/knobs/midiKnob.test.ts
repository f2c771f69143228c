import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type ControlChange, learnMidiKnob, midiSteps, readControlChange } from "../../../src/realdial/knobs/midiKnob";

const change = (value: number, controller = 20, channel = 0): ControlChange => ({ channel, controller, value });
const turn = (value: number, steps = 24, controller = 20) =>
  Array.from({ length: steps }, () => change(value, controller));

/** How the encodings write a step of so many, from their descriptions. */
const WRITTEN = {
  "twos-complement": (steps: number) => change(steps & 0x7f),
  "sign-and-size": (steps: number) => change(steps < 0 ? 64 | -steps : steps),
  "offset-64": (steps: number) => change(64 + steps),
} as const;

describe("a MIDI message", () => {
  test.each([
    { bytes: [0xb3, 20, 65], read: { channel: 3, controller: 20, value: 65 } },
    { bytes: [0x90, 20, 65], read: null },
    { bytes: [0xb3, 20], read: null },
    { bytes: [], read: null },
  ])("$bytes", ({ bytes, read }) => {
    expect(readControlChange(Uint8Array.from(bytes))).toEqual(read);
  });
});

describe("a MIDI knob without ends", () => {
  test.each(["twos-complement", "sign-and-size", "offset-64"] as const)("is learned and followed: %s", (encoding) => {
    const write = WRITTEN[encoding];
    const sizes = fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 12, maxLength: 100 });
    const sign = fc.constantFrom(1, -1);
    fc.assert(
      fc.property(sizes, sign, fc.integer({ min: -20, max: 20 }), (all, left, steps) => {
        const learned = learnMidiKnob(
          all.map((size) => write(left * size)),
          all.map((size) => write(-left * size)),
        );
        const perTurn = left * all.reduce((sum, size) => sum + size, 0);
        expect(learned).toEqual({ knob: { channel: 0, controller: 20, encoding, perTurn } });
        if ("knob" in learned) expect(midiSteps(learned.knob, write(steps))).toBe(steps);
      }),
    );
  });

  test("with data increment and decrement is one knob", () => {
    const learned = learnMidiKnob(turn(0, 24, 97), turn(0, 26, 96));
    expect(learned).toEqual({ knob: { channel: 0, controller: 97, encoding: "increment", perTurn: -25 } });
    if ("knob" in learned)
      expect([96, 97, 20].map((controller) => midiSteps(learned.knob, change(0, controller)))).toEqual([1, -1, 0]);
  });

  test("does not hear another", () => {
    const learned = learnMidiKnob(turn(1), turn(127));
    if (!("knob" in learned)) throw new Error("not learned");
    expect(midiSteps(learned.knob, change(1, 21))).toBe(0);
    expect(midiSteps(learned.knob, change(1, 20, 5))).toBe(0);
  });

  const positions = (from: number, to: number) =>
    Array.from({ length: Math.abs(to - from) }, (_, k) => change(from + Math.sign(to - from) * k));
  test.each([
    { why: "nothing came", left: [], right: turn(1), failed: "nothing" },
    { why: "it went one way twice", left: turn(1), right: turn(1), failed: "has-ends" },
    { why: "it sends positions in the low half", left: positions(3, 40), right: positions(40, 3), failed: "has-ends" },
    {
      why: "it sends positions across the middle",
      left: positions(40, 90),
      right: positions(90, 40),
      failed: "has-ends",
    },
    { why: "two knobs were turned", left: [...turn(1), ...turn(1, 24, 21)], right: turn(127), failed: "more-than-one" },
    { why: "one turn was twice the other", left: turn(1, 48), right: turn(127, 24), failed: "uneven" },
  ])("is not learned where $why", ({ left, right, failed }) => {
    expect(learnMidiKnob(left, right)).toEqual({ failed });
  });
});
