import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { timeOf, timeText } from "../../../src/app/parts/timeText";

describe("a typed time", () => {
  test.each([
    ["", undefined],
    ["  ", undefined],
    ["1:30", 90],
    ["0:45", 45],
    ["90", 90],
    ["90 s", 90],
    ["2 min", 120],
    ["1.5 min", 90],
    ["1:05:00", 3900],
    ["90:00", 5400],
    ["0:07,5", 7.5],
    ["1:75", Number.NaN],
    ["1:3", Number.NaN],
    ["soon", Number.NaN],
    ["-5", Number.NaN],
    ["1e9", Number.NaN],
  ])("%j is %s s", (typed, seconds) => {
    expect(timeOf(typed)).toEqual(seconds);
  });

  test("is read back as it is written, to the millisecond", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 36_000_000 }), (thousandths) => {
        expect(timeOf(timeText(thousandths / 1000))).toBeCloseTo(thousandths / 1000, 9);
      }),
    );
  });
});
