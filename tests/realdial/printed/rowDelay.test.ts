import { describe, expect, test } from "vitest";
import { RowDelay } from "../../../src/realdial/printed/rowDelay";

/** How sharp a track of 50 is whose rows lie over three fifths of the picture, where it is seen twisted by so much. */
const twistedBy = (twist: number) => (taken: number) => {
  const off = 50 * 0.6 * (twist - taken) * Math.PI;
  return 0.3 * (Math.abs(off) < 1e-9 ? 1 : Math.sin(off) / off) ** 2;
};

describe("a camera's delay is learned from what is sharp", () => {
  test.each([0.016, 0.0075, 0, -0.019])("%f s", (delay_s) => {
    const delay = new RowDelay();
    for (const speed of [0.4, 0.8, -1.1, 1.3]) delay.learn(speed, twistedBy(speed * delay_s));
    expect(delay.twistAt(1)).toBeCloseTo(delay_s, 3);
  });
});

test("another camera's delay takes its place", () => {
  const delay = new RowDelay();
  for (let k = 0; k < 60; k++) delay.learn(1, twistedBy(0.016));
  for (let k = 0; k < 120; k++) delay.learn(1, twistedBy(-0.01));
  expect(delay.twistAt(1)).toBeCloseTo(-0.01, 3);
});

test("a dial at rest, a frame without sharpness and a delay of no camera teach nothing", () => {
  const delay = new RowDelay();
  delay.learn(0.05, twistedBy(0.05 * 0.03));
  delay.learn(1, () => 0);
  expect(delay.twistAt(1)).toBeCloseTo(0, 9);
  for (let k = 0; k < 60; k++) delay.learn(1.5, twistedBy(0.3));
  expect(Math.abs(delay.twistAt(1))).toBeLessThanOrEqual(0.04);
});

test.each([
  [0.02, 2, false],
  [0.035, 2, true],
  [-0.035, -2, true],
  [0.035, 0.1, false],
])("a delay of %f s is too long at %f turns/s: %s", (delay_s, speed, expected) => {
  const delay = new RowDelay();
  for (let k = 0; k < 20; k++) delay.learn(1, twistedBy(delay_s));
  expect(delay.isTooLongAt(speed)).toBe(expected);
});

describe("a delay that is not learned", () => {
  test("leaves a reading that lies off the middle row open, at a speed", () => {
    expect(new RowDelay().isInDoubtAt(1, 0.1)).toBe(true);
    expect(new RowDelay().isInDoubtAt(0.3, 0.1)).toBe(false);
    expect(new RowDelay().isInDoubtAt(1, 0.01)).toBe(false);
  });

  test("does so until it is learned", () => {
    const delay = new RowDelay();
    for (let k = 0; k < 3; k++) delay.learn(1.3, twistedBy(1.3 * 0.016));
    expect(delay.isInDoubtAt(1, 0.1)).toBe(false);
  });

  test("does so for 12 frames where blur hides it", () => {
    const delay = new RowDelay();
    const doubts = Array.from({ length: 20 }, () => {
      delay.learn(1.3, () => 0.01);
      return delay.isInDoubtAt(1, 0.1);
    });
    expect(doubts.filter(Boolean)).toHaveLength(12);
  });
});
