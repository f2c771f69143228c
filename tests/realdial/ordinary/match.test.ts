import { describe, expect, test } from "vitest";
import { Exposure } from "../../../src/realdial/ordinary/match/exposure";
import { Judge } from "../../../src/realdial/ordinary/match/judge";
import { predicted } from "../../../src/realdial/ordinary/match/prediction";
import { Print } from "../../../src/realdial/ordinary/match/print";
import { Seeker } from "../../../src/realdial/ordinary/match/seek";
import { AROUND } from "../../../src/realdial/ordinary/pose/ring";
import { CELLS } from "../../../src/realdial/ordinary/strip/strip";
import { seeded } from "../../support/seeded";

/** A print of smooth bumps in no order, and the same turned left by some columns. */
function bumps(turned: number): Float32Array {
  const chance = seeded(4);
  const waves = Array.from({ length: 60 }, () => ({
    k: 1 + Math.floor(90 * chance()),
    phase: 6.3 * chance(),
    row: chance(),
  }));
  return Float32Array.from({ length: CELLS }, (_, cell) => {
    const row = Math.floor(cell / AROUND);
    const angle = (2 * Math.PI * ((cell % AROUND) - turned)) / AROUND;
    return (
      1 + 0.1 * waves.reduce((sum, { k, phase, row: own }) => sum + Math.sin(k * angle + phase + own * row * k), 0)
    );
  });
}

describe("a print is found where it was turned to", () => {
  const print = new Print(bumps(0));
  const gain = new Float32Array(CELLS).fill(1);
  test.each([0, 10.3, 500.7, 1023.4])("%f columns", (turned) => {
    const shown = bumps(turned);
    // A finger over a fifth of the ring.
    for (let cell = 0; cell < CELLS; cell++) if (cell % AROUND < AROUND / 5) shown[cell] = 9;
    const judge = new Judge(print, gain, [0, 0, 0]);
    judge.look(shown);
    const [first] = new Seeker(print, gain).offer(shown, [0]);
    const found = judge.refine(first ?? { turned: 0, blur: 0 });
    const off = (found.turned - turned + 1.5 * AROUND) % AROUND;
    expect(off).toBeCloseTo(AROUND / 2, 1);
    expect(found.inSight).toBeGreaterThan(0.6);
  });
});

describe("what does not belong to a print does not hide where it is:", () => {
  const across = (cell: number) => (cell % AROUND) / AROUND;
  const shade = (level: number, cell: number) => level + 1.2 * Math.sin(6 * Math.PI * across(cell));
  test.each([
    {
      what: "cells that shine far brighter than any print",
      learned: (level: number) => level,
      seen: (level: number, cell: number) => (Math.abs(across(cell) - 0.3) < 0.02 ? 3000 : level),
    },
    { what: "shade that stays, and was learned with it", learned: shade, seen: shade },
  ])("$what", ({ learned, seen }) => {
    const seeker = new Seeker(new Print(bumps(0).map(learned)), new Float32Array(CELLS).fill(1));
    for (const turned of [170, 500, 850]) {
      const [first] = seeker.offer(bumps(turned).map(seen), [0]);
      expect(Math.abs((first?.turned ?? 0) - turned)).toBeLessThan(1);
    }
  });
});

test("what is expected of a dial reaches farther the longer it is not seen", () => {
  const seen = { turned: 0, speed: 2, over: 33, at: 0 };
  const soon = predicted(seen, 33, 10.24);
  const late = predicted(seen, 330, 10.24);
  expect(soon.turned).toBeCloseTo(66, 9);
  // It can have been stopped at once.
  expect(soon.least).toBeLessThan(0);
  expect(soon.most).toBeLessThan(66 + 5 * 10.24);
  expect(late.most - late.least).toBeGreaterThan(AROUND);
});

test("a dial whose speed is not known can have come as far as a hand turns it", () => {
  const graduation = 10.24;
  const { least, most } = predicted({ turned: 0, speed: 0, over: 0, at: 0 }, 20, graduation);
  // 8 turns a second.
  expect(most).toBeGreaterThan(16 * graduation);
  expect(least).toBeLessThan(-16 * graduation);
  expect(most).toBeLessThan(17 * graduation);
});

test("exposure is learned from blur and speed", () => {
  const exposure = new Exposure();
  for (let i = 0; i < 60; i++) exposure.learn(2, 32);
  expect(exposure.ms).toBeCloseTo(16, 2);
  expect(exposure.blursFor([0, 2])).toContain(32);
});
