import { expect, test } from "vitest";
import { AROUND } from "../../../src/realdial/ordinary/pose/ring";
import { differsFromItself } from "../../../src/realdial/ordinary/strip/repeats";
import { CELLS } from "../../../src/realdial/ordinary/strip/strip";
import { seeded } from "../../support/seeded";

const GRADUATIONS = 100;

/** A strip of marks, longer at fives and tens, with something of its own (or the same) inside each tenth mark, and noise. */
function printed(numerals: "different" | "the same" | "none", noise: number): Float32Array {
  const chance = seeded(9);
  const shapes = Array.from({ length: 10 }, () => Array.from({ length: 40 }, () => (chance() < 0.4 ? 1 : 0)));
  return Float32Array.from({ length: CELLS }, (_, cell) => {
    const row = Math.floor(cell / AROUND);
    const at = ((cell % AROUND) * GRADUATIONS) / AROUND;
    const mark = Math.round(at) % GRADUATIONS;
    const isTen = mark % 10 === 0;
    const isOn = Math.abs(at - Math.round(at)) < (isTen ? 0.13 : 0.1);
    const isMark = isOn && row >= (isTen ? 8 : mark % 5 === 0 ? 9 : 10);
    const off = Math.floor((at % 10) * 4);
    const shape = shapes[numerals === "the same" ? 0 : Math.floor(at / 10)] ?? [];
    const isNumeral = numerals !== "none" && row > 1 && row < 7 && off < 8 && shape[off * 5 + row - 2] === 1;
    return (isMark || isNumeral ? 4 : 0.5) + noise * (chance() + chance() - 1);
  });
}

test.each([
  { why: "numerals tell its tenths apart", numerals: "different", noise: 0.3, isTold: true },
  { why: "there are only marks", numerals: "none", noise: 0.3, isTold: false },
  { why: "each tenth mark has the same sign inside", numerals: "the same", noise: 0.3, isTold: false },
  { why: "nothing is seen at all", numerals: "none", noise: 0, isTold: false },
] as const)("of a print it is told whether it comes again: $why", ({ numerals, noise, isTold }) => {
  const print = noise === 0 ? new Float32Array(CELLS).fill(1) : printed(numerals, noise);
  const differs = differsFromItself(print, GRADUATIONS);
  if (isTold) expect(differs).toBeGreaterThan(0.1);
  else expect(differs).toBeLessThan(0.05);
});
