import { expect, test } from "vitest";
import { readSetup } from "../../../src/realdial/setup/setupRecord";

const FOUND = {
  at: 1.8e12,
  perTurn: 100,
  resolution: 0.05,
  noise: 0.01,
  rate: 30,
  delay_ms: 40,
  errors: [0.1, -0.2, 0],
};

test("what a setup found is read as it was remembered", () => {
  expect(readSetup(JSON.stringify(FOUND))).toEqual(FOUND);
  expect(readSetup(JSON.stringify({ ...FOUND, noise: null, rate: null, delay_ms: null, errors: [] }))).not.toBeNull();
});

test("a dial of one graduation and a hand that is seen at once are taken", () => {
  const least = { ...FOUND, perTurn: 1, delay_ms: 0, resolution: 0, noise: 0, rate: 0 };
  expect(readSetup(JSON.stringify(least))).toEqual(least);
});

test.each([
  ["nothing", null],
  ["no text of this kind", "{"],
  ["another value", "7"],
  ["null", "null"],
  ["a day that no calendar has", JSON.stringify({ ...FOUND, at: 1e300 })],
  ["no number", JSON.stringify({ ...FOUND, at: null })],
  ["a dial of no size", JSON.stringify({ ...FOUND, perTurn: 0 })],
  ["an error beyond any dial", JSON.stringify({ ...FOUND, errors: [1e9] })],
  ["four stops", JSON.stringify({ ...FOUND, errors: [0, 0, 0, 0] })],
  ["a field less", JSON.stringify({ ...FOUND, noise: undefined })],
  ["a text in a number's place", JSON.stringify({ ...FOUND, rate: "30" })],
])("a spoiled memory is no setup: %s", (_, text) => {
  expect(readSetup(text)).toBeNull();
});
