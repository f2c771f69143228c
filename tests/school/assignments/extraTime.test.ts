import fc from "fast-check";
import { expect, test } from "vitest";
import { parseSheet } from "../../../src/drill/sheet/parseSheet";
import type { Sheet } from "../../../src/drill/sheet/sheet";
import { SHIPPED_SHEETS } from "../../../src/drill/sheet/shippedSheets";
import { withExtraTime } from "../../../src/school/assignments/extraTime";
import { dialingStation, testSheet, zeroingStation } from "../../support/testSheet";

const RULES = { pauseAllowed: false, onReload: "resume", clockHideable: false } as const;

const SHEET = testSheet({
  stations: [
    dialingStation({ timeLimit_s: 61, passMarks: { firstTime: 1, meanTime_s: 30 } }),
    zeroingStation({ passMarks: { zeroed: 1 } }),
  ],
  sitting: { ...RULES, timeLimit_s: 601 },
});

test("every time of a sheet is longer, rounded up to a second, and nothing else is changed", () => {
  const longer = withExtraTime(SHEET, 25);
  expect(longer).toEqual({
    ...SHEET,
    stations: [
      { ...SHEET.stations[0], timeLimit_s: 77, passMarks: { firstTime: 1, meanTime_s: 38 } },
      SHEET.stations[1],
    ],
    sitting: { ...RULES, timeLimit_s: 752 },
  });
});

test("a sheet that names no time stays the sheet it is", () => {
  const free = testSheet({ stations: [dialingStation({})] });
  expect(withExtraTime(free, 50)).toEqual(free);
});

const timesOf = ({ stations, sitting }: Sheet) => [
  ...stations.flatMap(({ timeLimit_s, passMarks }) => [timeLimit_s, passMarks.meanTime_s]),
  sitting?.timeLimit_s,
];

test("whatever the percent, a shipped sheet stays one that can be read, with no time shorter", () => {
  fc.assert(
    fc.property(fc.constantFrom(...SHIPPED_SHEETS), fc.integer({ min: 0, max: 300 }), (sheet, percent) => {
      const longer = parseSheet(JSON.parse(JSON.stringify(withExtraTime(sheet, percent))));
      timesOf(longer).forEach((time, k) => {
        const before = timesOf(sheet)[k];
        if (before === undefined) expect(time).toBeUndefined();
        else expect(time).toBeGreaterThanOrEqual(Math.min(36_000, (before * (100 + percent)) / 100));
      });
    }),
  );
});

test("the longest time that a sheet can name is never passed", () => {
  const long = testSheet({ stations: [dialingStation({ timeLimit_s: 30_000 })] });
  expect(withExtraTime(long, 300).stations[0]?.timeLimit_s).toBe(36_000);
});
