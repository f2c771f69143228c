import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type AttemptCondition, conditionsOf, heldUnder } from "../../src/records/attemptConditions";
import { conditionCode, conditionOf, plainCodes } from "../../src/records/conditionCode";
import { settingsKey } from "../../src/records/settingsKey";

/** Any number there is but -0, which is written as 0. */
const size = fc.double({ noNaN: true, noDefaultInfinity: true }).map((one) => one + 0);
const anyCondition: fc.Arbitrary<AttemptCondition> = fc.oneof(
  fc.record({
    kind: fc.constantFrom("index-offset" as const, "lost-motion" as const, "keyed-off" as const, "noise" as const),
    size,
  }),
  fc.record({ kind: fc.constant("runout" as const), size, at: size }),
  fc.record({ kind: fc.constant("catching" as const), drag: size, at: size, arc: size }),
  fc.record({ kind: fc.constantFrom("heavy-dial" as const, "light-dial" as const, "no-cutaway" as const) }),
);

describe("a condition as records keep it", () => {
  test("is the same condition again", () => {
    fc.assert(
      fc.property(anyCondition, (condition) => {
        expect(conditionOf(conditionCode(condition))).toEqual(condition);
      }),
    );
  });

  test("has room in a record", () => {
    fc.assert(fc.property(anyCondition, (condition) => conditionCode(condition).length <= 100));
  });

  // Written by version 0.2.0, letter by letter.
  test.each([
    ["index offset -0.4", { kind: "index-offset", size: -0.4 }],
    ["lost motion 1", { kind: "lost-motion", size: 1 }],
    ["noise 1e-7", { kind: "noise", size: 1e-7 }],
    ["heavy dial", { kind: "heavy-dial" }],
    ["light dial", { kind: "light-dial" }],
    ["no cutaway", { kind: "no-cutaway" }],
  ] as const)("is read as ever: %s", (code, condition) => {
    expect(conditionOf(code)).toEqual(condition);
    expect(conditionCode(condition)).toBe(code);
  });

  test.each([
    "",
    "rain",
    "heavy dial 2",
    "heavy dialer",
    "noise",
    "noise x",
    "noise NaN",
    "noise 1 2",
    "runout 1",
    "index-offset 0.4",
  ])('is none for "%s"', (text) => {
    expect(conditionOf(text)).toBeNull();
  });
});

describe("what holds during an attempt", () => {
  test("is told by its conditions", () => {
    fc.assert(
      fc.property(fc.array(anyCondition, { maxLength: 6 }), (conditions) => {
        const held = heldUnder(conditions);
        expect(heldUnder(conditionsOf(held))).toEqual(held);
      }),
    );
  });

  test("is one setting, however it was written", () => {
    const keyOf = (...conditions: string[]) =>
      settingsKey({ profileId: "three-wheel", exercise: "open", help: "full", conditions });
    expect(keyOf("index offset 0.4", "index offset 1", "lost motion 0")).toBe(keyOf("index offset 1"));
    expect(keyOf("no cutaway", "heavy dial")).toBe(keyOf("heavy dial", "no cutaway"));
    expect(keyOf("index offset 0.4")).not.toBe(keyOf("index offset -0.4"));
    expect(keyOf("rain", "lost motion 0")).toBe('["three-wheel","open","full",["lost motion 0","rain"]]');
    expect(plainCodes(["rain"])).toEqual(["rain"]);
  });
});
