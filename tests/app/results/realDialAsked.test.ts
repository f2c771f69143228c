import { expect, test } from "vitest";
import { asksForRealDial, realDialWords } from "../../../src/app/results/realDialAsked";
import type { Admission } from "../../../src/drill/sheet/admission";
import { changeStation, dialingStation, testSheet, zeroingStation } from "../../support/testSheet";

const sheetOf = (...rules: readonly (Admission | undefined)[]) =>
  testSheet({
    stations: [
      changeStation(),
      ...rules.map((turnedBy, k) =>
        k % 2 === 0 ? dialingStation({ id: `d${k}`, turnedBy }) : zeroingStation({ id: `z${k}`, turnedBy }),
      ),
    ],
  });

test.each<[readonly (Admission | undefined)[], boolean, RegExp | null]>([
  [[], false, null],
  [[undefined, "any"], false, null],
  [["screen"], false, null],
  [["screen", "not-coarse"], false, /^You may turn a real dial/],
  [["not-coarse", "real-dial"], true, /^Set up the real dial that this sheet asks for/],
])("a sheet whose stations admit %j says so before the clock runs", (rules, isAsked, words) => {
  const sheet = sheetOf(...rules);
  expect(asksForRealDial(sheet)).toBe(isAsked);
  if (words === null) expect(realDialWords(sheet)).toBeNull();
  else expect(realDialWords(sheet)).toMatch(words);
});
