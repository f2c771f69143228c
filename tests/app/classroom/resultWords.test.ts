import { expect, test } from "vitest";
import {
  difficultyText,
  type ItemFigures,
  markTexts,
  outcomeText,
  type SittingLine,
  sortingText,
} from "../../../src/app/classroom/results/resultWords";

const LINE: SittingLine = {
  sittingId: "s",
  attempt: 1,
  begunAt: 0,
  receivedAt: 1,
  outcome: "passed",
  right: 0.916,
  reloads: 0,
  isLate: false,
  problems: 0,
};

test.each<readonly [part: Partial<SittingLine>, words: string]>([
  [{}, "Passed, 92 % right"],
  [{ outcome: "failed", right: 0.5 }, "Not passed, 50 % right"],
  [{ outcome: null }, "Does not agree"],
  [{ outcome: null, receivedAt: null }, "Under way, or not sent yet"],
])("a sitting with %j reads %s", (part, words) => {
  expect(outcomeText({ ...LINE, ...part })).toBe(words);
});

test("what an instructor should know stands beside it, and nothing where there is nothing", () => {
  expect(markTexts(LINE)).toEqual([]);
  const marked = { ...LINE, reloads: 2, isLate: true, doubted: 1, problems: 1 };
  expect(markTexts(marked)).toEqual(["2 reloads", "sent late", "turns in doubt in 1 try", "1 problem"]);
});

const ITEM: ItemFigures = {
  item: "q",
  people: 8,
  share: 0.75,
  interval: { low: 0.409, high: 0.929 },
  discrimination: 0.4,
  discriminationInterval: { low: -0.2, high: 0.8 },
};

test("how hard an item is stands with its counts and how sure that is", () => {
  expect(difficultyText(ITEM)).toBe("75 % right of 8 people; the true share lies between 41 % and 93 %");
  expect(difficultyText({ ...ITEM, people: 1, interval: null })).toBe("75 % right of 1 person");
});

test.each<readonly [part: Partial<ItemFigures>, words: RegExp]>([
  [{}, /^These results cannot show/],
  [{ discriminationInterval: null }, /^These results cannot show/],
  [{ discrimination: null }, /^There is nothing to compare/],
  [{ discriminationInterval: { low: 0.1, high: 0.8 } }, /did well here too\.$/],
  [{ discriminationInterval: { low: -0.8, high: -0.1 } }, /did badly here/],
])("with %j its discrimination reads as %s", (part, words) => {
  expect(sortingText({ ...ITEM, ...part })).toMatch(words);
});
