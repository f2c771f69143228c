import { expect, test } from "vitest";
import { placeAfter, scrollTopAfter } from "../../../../src/app/logbook/attempts/rowPlaces";

test.each([
  ["ArrowUp", 41, 40],
  ["ArrowUp", 0, 0],
  ["ArrowDown", 41, 42],
  ["ArrowDown", 99, 99],
  ["PageUp", 41, 32],
  ["PageUp", 4, 0],
  ["PageDown", 41, 50],
  ["PageDown", 95, 99],
  ["Home", 41, 0],
  ["End", 41, 99],
  ["Enter", 41, null],
])("%s goes from row %i of 100, nine of them in view, to %s", (key, from, to) => {
  expect(placeAfter(key, from, 9, 100)).toBe(to);
});

test("a list lower than a row still turns its pages", () => {
  expect(placeAfter("PageDown", 3, 0, 100)).toBe(4);
});

const laid = { name: "all", moved: 2, rowHeight: 60 };

test.each([
  ["rows that come in above move the view down with its rows", 600, { ...laid, moved: 5 }, 780],
  ["at the top of the list, what comes in is shown", 0, { ...laid, moved: 5 }, 0],
  ["rows of another height leave the same one at the top", 630, { ...laid, rowHeight: 80 }, 840],
  ["another list begins at its top", 600, { ...laid, name: "misses" }, 0],
])("%s", (_, scrollTop, now, then) => {
  expect(scrollTopAfter(scrollTop, laid, now)).toBe(then);
});
