import { expect, test } from "vitest";
import {
  newProgress,
  progressOf,
  type SittingProgress,
  sittingToGoOn,
} from "../../../../src/app/sittings/session/sittingProgress";
import { testSheet } from "../../../support/testSheet";

const kept = (id: string, keeps: number, startedAt = "2026-11-26T10:00:00.000Z"): SittingProgress => ({
  ...newProgress({ id, sheet: testSheet(), seed: 1, person: null, personId: null }),
  snapshot: {},
  startedAt,
  keeps,
});

const LATER = "2026-11-26T11:00:00.000Z";

test.each([
  ["nothing, where nothing was kept", null, [], null],
  ["what the logbook has, where the page's text is gone", null, [kept("a", 3)], kept("a", 3)],
  ["the text, where the logbook has nothing", kept("a", 3), [], kept("a", 3)],
  ["the text, where the logbook has not caught up", kept("a", 4), [kept("a", 3)], kept("a", 4)],
  ["the logbook, where the text was lost in part", kept("a", 2), [kept("a", 3)], kept("a", 3)],
  ["the later sitting, where the text is of one before", kept("a", 9), [kept("b", 2, LATER)], kept("b", 2, LATER)],
  ["the text, where the logbook has an earlier one left", kept("b", 1, LATER), [kept("a", 9)], kept("b", 1, LATER)],
])("goes on with %s", (_what, text, running, wanted) => {
  expect(sittingToGoOn(text, running)).toEqual(wanted);
});

test("reads what an earlier version kept, without a person's id or a count", () => {
  const { personId: _id, keeps: _keeps, ...early } = kept("a", 3);
  expect(progressOf(early)).toMatchObject({ id: "a", personId: null, keeps: 0 });
  expect(progressOf({ ...early, tries: undefined })).toBeNull();
  expect(progressOf(null)).toBeNull();
});
