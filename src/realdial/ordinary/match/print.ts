import { Fourier } from "../../numerics/fourier";
import { AROUND } from "../pose/ring";
import { CELLS, ROWS } from "../strip/strip";

/** Rows of a print are laid out twice around, so that a piece that crosses the seam lies in one. */
export const DOUBLE = 2 * AROUND;

/** Blurs are kept in steps of so many columns. */
const BLUR_STEP = 2;

/** What a dial shows, at rest and blurred by motion. */
export class Print {
  private readonly sums: Float64Array;
  private readonly blurred = new Map<number, Float32Array>();
  private readonly spectra = new Map<number, Spectrum>();

  /** @param print - a strip of it as it lies at position 0 */
  constructor(print: Float32Array) {
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

  /** The same as waves around the ring, of unit size, for correlation. */
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
  /** Square root of the sum of squares of all its levels. */
  readonly size: number;
}

const transform = new Fourier(AROUND);

/** The waves of rows that begin `stride` apart. */
export function spectrumOf(rows: Float32Array, stride: number): Spectrum {
  const real: Float64Array[] = [];
  const imaginary: Float64Array[] = [];
  let squares = 0;
  for (let row = 0; row < ROWS; row += 2) {
    const re = new Float64Array(rows.subarray(row * stride, row * stride + AROUND));
    const im = new Float64Array(rows.subarray((row + 1) * stride, (row + 1) * stride + AROUND));
    for (let i = 0; i < AROUND; i++) squares += (re[i] as number) ** 2 + (im[i] as number) ** 2;
    transform.forward(re, im);
    real.push(re);
    imaginary.push(im);
  }
  return { real, imaginary, size: Math.sqrt(squares) };
}

/**
 * How alike two are for each number of columns that the first is turned left of the second: two rows at once, since the
 * real part of z conj(p) is the sum of the products of both.
 *
 * @param alike - is set, `AROUND` values: 1 would be the same
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
  const size = shown.size * print.size;
  if (size > 0) for (let i = 0; i < AROUND; i++) alike[i] = (alike[i] as number) / size;
}

/** Cells that show the print well enough: where the light is not too weak. */
export function goodCells(gain: Float32Array): Uint8Array {
  const sorted = Float32Array.from(gain).sort();
  const least = 0.25 * (sorted[Math.floor(0.6 * CELLS)] as number);
  return Uint8Array.from(gain, (one) => (one > least ? 1 : 0));
}
