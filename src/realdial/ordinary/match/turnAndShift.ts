import { LeastSquares } from "../../numerics/leastSquares";
import type { DialPose } from "../pose/dialPose";
import { cosineAt, sineAt } from "../pose/ring";
import { beginOf, PIECE_COLUMNS } from "../strip/pieces";

/** A shift, and a wobble, are held as if so much more of the ring said that there is none: at 10 degrees of tilt a wobble shows too little. */
const HELD = [0, 0.02, 0.02, 2e-4, 2e-4];

/** So many pieces of one weight say how well they agree. */
const FEWEST = 3;

/** How aslant a face lies, from 0, seen from before it, to 1; and that times cosine and sine of twice the direction in which it is seen shortened. */
export type Slant = readonly [aslant: number, cosine: number, sine: number];

/** How a face with a pose lies aslant: its eigenvectors of AᵀA are the long and the short direction. */
export function slantOf({ shape: [a, b, c, d] }: DialPose): Slant {
  const [xx, xy, yy] = [a * a + c * c, a * b + c * d, b * b + d * d];
  const [cosine, sine] = [(yy - xx) / (xx + yy), (-2 * xy) / (xx + yy)];
  return [Math.hypot(cosine, sine), cosine, sine];
}

/**
 * A turn of all pieces, a shift of the face and a wobble of it that explain their offsets best. A face that turns about an axis
 * not quite its own rises and falls around the ring, by sin(α − ψ) at a direction α. Seen aslant in the direction τ it is moved
 * by sin(τ − α) sin(α − ψ) along the ring, which is half of cos(2α − τ − ψ) − cos(τ − ψ): the first goes around twice and
 * is seen, and gives away the second, which looks like a turn.
 */
export class TurnAndShift {
  private readonly slant: Slant;
  private readonly fit = new LeastSquares(HELD.length);
  private readonly said: { readonly row: readonly number[]; readonly offset: number; readonly weight: number }[] = [];
  private weights = 0;

  constructor(slant: Slant) {
    this.slant = slant;
  }

  /** Adds what a piece says: columns left, and how much it counts. */
  add(piece: number, offset: number, weight: number): void {
    const at = beginOf(piece) + PIECE_COLUMNS / 2;
    const [aslant, cosine, sine] = this.slant;
    const row = [1, cosineAt(at), sineAt(at), aslant * cosineAt(2 * at) - cosine, aslant * sineAt(2 * at) - sine];
    this.fit.add(row, offset, weight);
    this.said.push({ row, offset, weight });
    this.weights += weight;
  }

  /** The turn, and its standard error, columns left: once for all that was added. */
  solved(): { turn: number; error: number } {
    const { weights: n } = this;
    for (const [i, held] of HELD.entries()) this.fit.add(unknown(i), 0, n * held);
    const found = this.found();
    const [turn = 0] = found;
    let [squares, squaredWeights] = [0, 0];
    for (const { row, offset, weight } of this.said) {
      squares += weight * (offset - row.reduce((sum, one, i) => sum + one * (found[i] as number), 0)) ** 2;
      squaredWeights += weight * weight;
    }
    // Told once more by all the weight that the turn is one column more, the fit yields the more the worse it knew.
    this.fit.add(unknown(0), turn + 1, n);
    const yields = (this.found()[0] as number) - turn;
    const error = Math.sqrt((squares * squaredWeights * yields) / (1 - yields) / n) / n;
    return { turn, error: yields > 0 && n * n > FEWEST * squaredWeights ? error : Number.POSITIVE_INFINITY };
  }

  private found(): Float64Array {
    const found = new Float64Array(HELD.length);
    return this.fit.solveInto(found) ? found : found.fill(0);
  }
}

const unknown = (which: number) => HELD.map((_, i) => (i === which ? 1 : 0));
