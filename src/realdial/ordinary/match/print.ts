import { Fourier } from "../../numerics/fourier";
import { AROUND } from "../pose/ring";
import { limitsOf } from "../strip/lightMap";
import { CELLS, ROWS } from "../strip/strip";

/** Rows of a print are laid out twice around, so that a piece that crosses the seam lies in one. */
export const DOUBLE = 2 * AROUND;

/** Blurs are kept in steps of so many columns. */
const BLUR_STEP = 2;

/** What a dial shows, at rest and blurred by motion. */
export class Print {
  /** Between what its levels lie. */
  readonly limits: readonly [number, number];
  private readonly sums: Float64Array;
  private readonly blurred = new Map<number, Float32Array>();
  private readonly spectra = new Map<number, Spectrum>();

  /** @param print - a strip of it as it lies at position 0 */
  constructor(print: Float32Array) {
    this.limits = limitsOf(print);
    this.sums = new Float64Array(ROWS * (AROUND + 1));
    for (let row = 0; row < ROWS; row++) {
      let sum = 0;
      for (let i = 0; i < AROUND; i++) sum += print[row * AROUND + i] as number;
      const mean = sum / AROUND;
      sum = 0;
      for (let i = 0; i < AROUND; i++) {
        sum += (print[row * AROUND + i] as number) - mean;
        this.sums[row * (AROUND + 1) + i + 1] = sum;
      }
    }
  }

  /** The print, each row twice around, as a camera sees it whose exposure takes the dial so many columns on. */
  through(blur: number): Float32Array {
    const step = Math.max(0, Math.round(blur / BLUR_STEP));
    const known = this.blurred.get(step);
    if (known !== undefined) return known;
    const made = this.boxed(Math.max(1, step * BLUR_STEP));
    this.blurred.set(step, made);
    return made;
  }

  /** The same as waves around the ring, for correlation. */
  spectrumThrough(blur: number): Spectrum {
    const step = Math.max(0, Math.round(blur / BLUR_STEP));
    const known = this.spectra.get(step);
    if (known !== undefined) return known;
    const made = spectrumOf(this.through(blur), DOUBLE);
    this.spectra.set(step, made);
    return made;
  }

  private boxed(width: number): Float32Array {
    const rows = new Float32Array(ROWS * DOUBLE);
    for (let row = 0; row < ROWS; row++) {
      for (let i = 0; i < AROUND; i++) {
        const level =
          width === 1
            ? this.sumUntil(row, i + 1) - this.sumUntil(row, i)
            : (this.sumUntil(row, i + 0.5 + width / 2) - this.sumUntil(row, i + 0.5 - width / 2)) / width;
        rows[row * DOUBLE + i] = level;
        rows[row * DOUBLE + AROUND + i] = level;
      }
    }
    return rows;
  }

  /** Sum of a row before a column, which may lie anywhere: once around adds up to nothing. */
  private sumUntil(row: number, column: number): number {
    const whole = Math.floor(column);
    const part = column - whole;
    const from = row * (AROUND + 1) + (whole & (AROUND - 1));
    const sum = this.sums[from] as number;
    return sum + ((this.sums[from + 1] as number) - sum) * part;
  }
}

/** Waves around a ring, for each two rows: the first real, the second imaginary. */
export interface Spectrum {
  readonly real: readonly Float64Array[];
  readonly imaginary: readonly Float64Array[];
}

const transform = new Fourier(AROUND);

/** Waves that go around fewer times are left out: fingers, their shadows and the light make most of them. */
const LONGEST = 8;

/** The waves of rows that begin `stride` apart. */
export function spectrumOf(rows: Float32Array, stride: number): Spectrum {
  const real: Float64Array[] = [];
  const imaginary: Float64Array[] = [];
  for (let row = 0; row < ROWS; row += 2) {
    const re = new Float64Array(rows.subarray(row * stride, row * stride + AROUND));
    const im = new Float64Array(rows.subarray((row + 1) * stride, (row + 1) * stride + AROUND));
    transform.forward(re, im);
    for (const waves of [re, im]) {
      waves.fill(0, 0, LONGEST);
      waves.fill(0, AROUND + 1 - LONGEST);
    }
    real.push(re);
    imaginary.push(im);
  }
  return { real, imaginary };
}

/**
 * How alike two are for each number of columns that the first is turned left of the second: two rows at once, since the
 * real part of z conj(p) is the sum of the products of both.
 *
 * @param alike - is set, `AROUND` values: the more the more alike
 */
export function correlation(shown: Spectrum, print: Spectrum, alike: Float64Array, work: Float64Array): void {
  alike.fill(0);
  work.fill(0);
  for (let pair = 0; pair < ROWS / 2; pair++) {
    const a = shown.real[pair] as Float64Array;
    const b = shown.imaginary[pair] as Float64Array;
    const c = print.real[pair] as Float64Array;
    const d = print.imaginary[pair] as Float64Array;
    for (let k = 0; k < AROUND; k++) {
      alike[k] = (alike[k] as number) + (a[k] as number) * (c[k] as number) + (b[k] as number) * (d[k] as number);
      work[k] = (work[k] as number) + (b[k] as number) * (c[k] as number) - (a[k] as number) * (d[k] as number);
    }
  }
  transform.backward(alike, work);
}

/** Cells that show the print well enough, 1 for each and 0 for others: where the light is not too weak. */
export function goodCells(gain: Float32Array): Float32Array {
  const sorted = Float32Array.from(gain).sort();
  const least = 0.25 * (sorted[Math.floor(0.6 * CELLS)] as number);
  return Float32Array.from(gain, (one) => (one > least ? 1 : 0));
}
