import { solve } from "./linearSystem";

/**
 * Linear least squares by its normal equations, which are summed up row by row: for each row, weight · (row · x − value)²
 * is made small. For a step of Gauss-Newton a row is a residual's slopes, and the value what it falls short.
 */
export class LeastSquares {
  readonly unknowns: number;
  private readonly normal: Float64Array;
  private readonly right: Float64Array;
  private readonly work: Float64Array;
  /** How many rows it has. */
  rows = 0;

  /** @param unknowns - how many values are looked for */
  constructor(unknowns: number) {
    this.unknowns = unknowns;
    this.normal = new Float64Array(unknowns * unknowns);
    this.work = new Float64Array(unknowns * unknowns);
    this.right = new Float64Array(unknowns);
  }

  /** Forgets all rows. */
  clear(): void {
    this.normal.fill(0);
    this.right.fill(0);
    this.rows = 0;
  }

  /** Lets rows so far count for less. @param kept - share of their weight that is left */
  fade(kept: number): void {
    for (let k = 0; k < this.normal.length; k++) this.normal[k] = kept * (this.normal[k] as number);
    for (let k = 0; k < this.right.length; k++) this.right[k] = kept * (this.right[k] as number);
  }

  /** Adds one row. */
  add(row: ArrayLike<number>, value: number, weight = 1): void {
    const { unknowns, normal, right } = this;
    for (let i = 0; i < unknowns; i++) {
      const weighed = weight * (row[i] as number);
      if (weighed === 0) continue;
      right[i] = (right[i] as number) + weighed * value;
      for (let j = 0; j <= i; j++)
        normal[i * unknowns + j] = (normal[i * unknowns + j] as number) + weighed * (row[j] as number);
    }
    this.rows += 1;
  }

  /**
   * The values that fit best.
   *
   * @param damping - share added to each diagonal entry: 0 for least squares as they are, more for a shorter, safer step
   *   (K. Levenberg 1944, D. Marquardt 1963)
   * @param solution - is set
   * @returns false where the rows do not determine them
   */
  solveInto(solution: Float64Array, damping = 0): boolean {
    const { unknowns, normal, work } = this;
    for (let i = 0; i < unknowns; i++) {
      for (let j = 0; j < i; j++) {
        const entry = normal[i * unknowns + j] as number;
        work[i * unknowns + j] = entry;
        work[j * unknowns + i] = entry;
      }
      work[i * unknowns + i] = (normal[i * unknowns + i] as number) * (1 + damping);
    }
    solution.set(this.right);
    return solve(work, solution);
  }
}
