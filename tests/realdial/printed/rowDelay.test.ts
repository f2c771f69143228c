import { expect, test } from "vitest";
import { RowDelay } from "../../../src/realdial/printed/rowDelay";

test("a camera's delay is learned from steady turns, and forgotten with another", () => {
  const delay = new RowDelay();
  for (let k = 0; k < 60; k++) delay.learn(0.016 * 2, 2, 0.8);
  expect(delay.twistAt(-1.5)).toBeCloseTo(-0.024, 3);
  for (let k = 0; k < 60; k++) delay.learn(0, 2, 0.8);
  expect(delay.twistAt(1)).toBeCloseTo(0, 3);
});

test("a dial at rest and a single frame teach little", () => {
  const delay = new RowDelay();
  delay.learn(0.3, 0, 1);
  delay.learn(0.01, 0.1, 1);
  expect(delay.twistAt(1)).toBe(0);
  delay.learn(0.02, 1, 1);
  expect(delay.twistAt(1)).toBeLessThan(0.01);
});

test("no camera takes longer than 40 ms: such a twist is something else's", () => {
  const delay = new RowDelay();
  for (let k = 0; k < 60; k++) delay.learn(0.1, 2, 1);
  expect(delay.twistAt(1)).toBe(0);
});
