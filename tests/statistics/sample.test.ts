import { expect, test } from "vitest";
import { mean, sampleSummary, spread, standardDeviation } from "../../src/statistics/sample";
import { StatisticsError } from "../../src/statistics/statisticsError";

test.each([
  ["the mean of nothing", () => mean([]), "empty-sample"],
  ["the spread of nothing", () => spread([]), "empty-sample"],
  ["the deviation of nothing", () => standardDeviation([]), "empty-sample"],
  ["the deviation of one value", () => standardDeviation([1]), "too-few-values"],
  ["the summary of one value", () => sampleSummary([1]), "too-few-values"],
  ["the mean of what is no number", () => mean([1, Number.NaN]), "not-finite"],
  ["the spread of what has no end", () => spread([1, Infinity]), "not-finite"],
])("%s is no number", (_why, ask, code) => {
  expect(ask).toThrow(StatisticsError);
  expect(ask).toThrow(expect.objectContaining({ code }));
});

test("the message says what is wrong, and where", () => {
  expect(() => mean([])).toThrow("there are no values yet");
});
