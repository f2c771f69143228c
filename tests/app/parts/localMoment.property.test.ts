import fc from "fast-check";
import { expect, test } from "vitest";
import { fullMinute, localMomentText, momentOfLocalText } from "../../../src/app/parts/localMoment";

const YEAR_1980 = 315_532_800_000;
const moments = fc.integer({ min: YEAR_1980, max: 4 * YEAR_1980 });

test("what a field of date and time was filled in from is the same moment, to the millisecond, while it is left as it was", () => {
  fc.assert(fc.property(moments, (moment) => momentOfLocalText(localMomentText(moment), moment) === moment));
});

test("what was typed is the moment that the clock of this device shows by it", () => {
  fc.assert(
    fc.property(moments, (moment) => {
      const typed = momentOfLocalText(localMomentText(moment));
      // The hour that a change of clocks gives twice reads the same both times.
      expect(localMomentText(typed ?? 0)).toBe(localMomentText(moment));
    }),
  );
});

test.each(["", "2026-11-24", "2026-13-24T14:05", "soon"])("%j is no moment", (text) => {
  expect(momentOfLocalText(text)).toBeNull();
});

test("a full minute is the one that has begun", () => {
  fc.assert(
    fc.property(moments, (moment) => {
      const past = moment - fullMinute(moment);
      expect(fullMinute(moment) % 60_000).toBe(0);
      expect(past >= 0 && past < 60_000).toBe(true);
    }),
  );
});
