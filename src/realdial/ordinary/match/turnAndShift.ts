import { cosineAt, sineAt } from "../pose/ring";
import { beginOf, PIECE_COLUMNS } from "../strip/pieces";

/** A shift is held as if so much more of the ring said that there is none. */
const SHIFT_HELD = 0.02;

/** A turn of all pieces and a shift of the face that explain their offsets best; shifts are held small. */
export class TurnAndShift {
  private readonly sums = new Float64Array(9);
  private squaredOffsets = 0;
  private squaredWeights = 0;

  /** Adds what a piece says: columns left, and how much it counts. */
  add(piece: number, offset: number, weight: number): void {
    const middle = beginOf(piece) + PIECE_COLUMNS / 2;
    const [c, s] = [cosineAt(middle), sineAt(middle)];
    const { sums } = this;
    [1, c, s, c * c, c * s, s * s, offset, c * offset, s * offset].forEach((one, i) => {
      sums[i] = (sums[i] as number) + weight * one;
    });
    this.squaredOffsets += weight * offset * offset;
    this.squaredWeights += weight * weight;
  }

  /** Standard error of their weighted mean, columns. */
  error(): number {
    const [n = 0, , , , , , o = 0] = this.sums;
    if (n === 0) return Number.POSITIVE_INFINITY;
    const variance = Math.max(0, this.squaredOffsets / n - (o / n) ** 2);
    return Math.sqrt((variance * this.squaredWeights) / (n * n));
  }

  /** The turn, columns left. */
  turn(): number {
    const [n = 0, c = 0, s = 0, cc = 0, cs = 0, ss = 0, o = 0, co = 0, so = 0] = this.sums;
    if (n === 0) return 0;
    // A shift is held as if half as much again of the ring said that there is none.
    const held = SHIFT_HELD * n;
    const [a, b, d] = [cc + held - (c * c) / n, cs - (c * s) / n, ss + held - (s * s) / n];
    const [e, f] = [co - (c * o) / n, so - (s * o) / n];
    const determinant = a * d - b * b;
    const x = (d * e - b * f) / determinant;
    const y = (a * f - b * e) / determinant;
    return (o - c * x - s * y) / n;
  }
}
