import { AROUND } from "../pose/ring";
import { CELLS, ROWS } from "./strip";

/** What is tried beside each whole number of graduations, columns: a print may lie a little unevenly. */
const BESIDE = [0, -0.5, 0.5];

/**
 * How much a print differs from itself turned by the number of graduations at which it is most alike: 0 for one that comes
 * again, as marks without numerals do, about 1 for one without any likeness. (Sum of squared differences over twice the
 * print's own sum of squares, with each row's mean taken out: 1 less its autocorrelation.)
 */
export function differsFromItself(print: Float32Array, graduations: number): number {
  const levels = new Float64Array(CELLS);
  let squares = 0;
  for (let row = 0; row < ROWS; row++) {
    const ring = print.subarray(row * AROUND, (row + 1) * AROUND);
    const mean = ring.reduce((sum, level) => sum + level, 0) / AROUND;
    ring.forEach((level, i) => {
      levels[row * AROUND + i] = level - mean;
      squares += (level - mean) ** 2;
    });
  }
  let least = 1;
  for (let by = 1; by <= graduations / 2; by++) {
    for (const beside of BESIDE) {
      least = Math.min(least, differenceOver(levels, (by * AROUND) / graduations + beside) / (2 * squares));
    }
  }
  return squares === 0 ? 0 : least;
}

function differenceOver(levels: Float64Array, columns: number): number {
  const whole = Math.floor(columns);
  const part = columns - whole;
  let sum = 0;
  for (let start = 0; start < CELLS; start += AROUND) {
    for (let i = 0; i < AROUND; i++) {
      const one = levels[start + ((i + whole) & (AROUND - 1))] as number;
      const next = levels[start + ((i + whole + 1) & (AROUND - 1))] as number;
      sum += ((levels[start + i] as number) - one - (next - one) * part) ** 2;
    }
  }
  return sum;
}
