import { LeastSquares } from "../numerics/leastSquares";
import type { MovingPoint } from "./view";

/** Standard deviations before anything is seen: of what draws out the rings and stays, and of a wobble, as a tangent. */
const USUAL = [0.004, 0.004, 0.0125, 0.0125];
/** Of what a frame shows. Frames that follow each other are off alike. */
const SCATTER = 0.006;
/** Of what was learned so much counts at the next frame. */
const KEPT = 0.99;

/**
 * Learns how a disc wobbles. Under a camera aslant, a point u of the disc that is raised by t · u is seen moved along the shift g
 * of height, by g (t · u). Half of that map draws out the rings, which is seen; the other half turns them, which is taken for
 * a turn of the dial. Curled paper and a lens draw out the rings too, and turn them little: that stays where it is, and a
 * wobble turns with the disc. Mutable.
 */
export class Wobble {
  /** What stays, along and aslant; then the slope of the disc at 0, to the right and down. */
  private readonly values = new Float64Array(USUAL.length);
  private readonly learned = new LeastSquares(USUAL.length);
  private readonly row = new Float64Array(USUAL.length);

  constructor() {
    this.expect(1);
  }

  /**
   * Takes how the rings are drawn out in a frame.
   *
   * @param along - along x, less along y, half of it, as a share
   * @param aslant - along the diagonal
   * @param g - where a point that is raised by 1 mm goes, mm
   * @param turns - of the disc, left positive
   * @returns what the wobble takes from the turns that are seen, turns
   */
  take(along: number, aslant: number, { x, y }: MovingPoint, turns: number): number {
    const { learned, values } = this;
    const [cosine, sine] = [Math.cos(2 * Math.PI * turns), Math.sin(2 * Math.PI * turns)];
    const [right, down] = [(x * cosine + y * sine) / 2, (x * sine - y * cosine) / 2];
    learned.fade(KEPT);
    this.expect(1 - KEPT);
    this.row.set([1, 0, right, down]);
    learned.add(this.row, along, SCATTER ** -2);
    this.row.set([0, 1, -down, right]);
    learned.add(this.row, aslant, SCATTER ** -2);
    if (!learned.solveInto(values)) return 0;
    const [, , toRight = 0, toDown = 0] = values;
    return (toRight * (y * cosine + x * sine) + toDown * (y * sine - x * cosine)) / (4 * Math.PI);
  }

  private expect(weight: number): void {
    for (const [k, usual] of USUAL.entries()) {
      this.row.fill(0);
      this.row[k] = 1;
      this.learned.add(this.row, 0, weight * usual ** -2);
    }
  }
}
