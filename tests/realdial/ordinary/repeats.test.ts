import { expect, test } from "vitest";
import { AROUND } from "../../../src/realdial/ordinary/pose/ring";
import { differsFromItself } from "../../../src/realdial/ordinary/strip/repeats";
import { CELLS } from "../../../src/realdial/ordinary/strip/strip";
import { seeded } from "../../support/seeded";

const GRADUATIONS = 100;

const chance = seeded(9);
const SHAPES = Array.from({ length: 10 }, () => Array.from({ length: 40 }, () => chance() < 0.4));

/** The first row of a mark: longer at fives and tens. */
const beginOf = (mark: number) => (mark % 10 === 0 ? 8 : mark % 5 === 0 ? 9 : 10);

/** Whether a mark is printed at a place (graduations) of a row. */
function isMark(at: number, row: number): boolean {
  const mark = Math.round(at) % GRADUATIONS;
  return Math.abs(at - Math.round(at)) < (mark % 10 === 0 ? 0.13 : 0.1) && row >= beginOf(mark);
}

/** Whether a numeral's shape is printed there: two graduations wide, five rows high, after each tenth mark. */
function isShape(shape: readonly boolean[] | undefined, at: number, row: number): boolean {
  const off = Math.floor((at % 10) * 4);
  return row > 1 && row < 7 && off < 8 && shape?.[off * 5 + row - 2] === true;
}

/** A strip of marks with something of its own (or the same, or nothing) inside each tenth mark, and noise. */
const printed = (numerals: "different" | "the same" | "none", noise: number): Float32Array =>
  Float32Array.from({ length: CELLS }, (_, cell) => {
    const row = Math.floor(cell / AROUND);
    const at = ((cell % AROUND) * GRADUATIONS) / AROUND;
    const shape = { different: SHAPES[Math.floor(at / 10)], "the same": SHAPES[0], none: undefined }[numerals];
    return (isMark(at, row) || isShape(shape, at, row) ? 4 : 0.5) + noise * (chance() + chance() - 1);
  });

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
