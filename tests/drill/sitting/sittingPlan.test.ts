import { expect, test } from "vitest";
import { SHIPPED_SHEETS } from "../../../src/drill/sheet/shippedSheets";
import { sittingPlan } from "../../../src/drill/sitting/sittingPlan";
import { dialingStation, testSheet, zeroingStation } from "../../support/testSheet";

test("a sheet without sitting rules is practice", () => {
  const sheet = testSheet({ stations: [dialingStation(), zeroingStation()] });
  expect(sittingPlan(sheet)).toEqual({
    tries: 12,
    questions: 0,
    pauseAllowed: true,
    onReload: "resume",
    timeLimit_ms: null,
  });
});

test("the Friday sitting: 34 tries, 14 questions, an hour and a half, no pause", () => {
  const friday = SHIPPED_SHEETS.find(({ title }) => title === "Friday sitting") ?? testSheet();
  expect(sittingPlan(friday)).toEqual({
    tries: 34,
    questions: 14,
    pauseAllowed: false,
    onReload: "resume",
    timeLimit_ms: 5_400_000,
  });
});
