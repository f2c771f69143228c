import { AROUND } from "./ring";

const SECTORS = 16;
const LENGTH = AROUND / SECTORS;
/** Marks may seem so much closer or wider than they are, in a pose that is not right yet. */
const STRETCHES = [0.76, 0.84, 0.92, 1, 1.08, 1.17, 1.28, 1.4];

/** Looks for evenly spaced marks in pieces of a ring. */
export class CombSeeker {
  private readonly waves: readonly { readonly cosines: Float64Array; readonly sines: Float64Array }[];

  /** @param graduations - marks around the whole ring */
  constructor(graduations: number) {
    this.waves = STRETCHES.map((stretch) => {
      const turn = (2 * Math.PI * graduations * stretch) / AROUND;
      return {
        cosines: Float64Array.from({ length: LENGTH }, (_, i) => Math.cos(turn * i)),
        sines: Float64Array.from({ length: LENGTH }, (_, i) => Math.sin(turn * i)),
      };
    });
  }

  /** How much of a ring is a comb of about the right pitch: 0 to 1, the mean over its pieces. */
  strengthOf(ring: Float64Array): number {
    let total = 0;
    for (let start = 0; start < AROUND; start += LENGTH) total += this.pieceStrength(ring, start);
    return total / SECTORS;
  }

  private pieceStrength(ring: Float64Array, start: number): number {
    let [sum, squares] = [0, 0];
    for (let i = start; i < start + LENGTH; i++) {
      const level = ring[i] as number;
      sum += level;
      squares += level * level;
    }
    const mean = sum / LENGTH;
    // A little is added, so that noise on an even face is no comb.
    const spread = squares - sum * mean + 4 * LENGTH;
    let best = 0;
    for (const wave of this.waves) best = Math.max(best, powerIn(ring, start, mean, wave));
    return Math.min(1, (2 * best) / (LENGTH * spread));
  }
}

function powerIn(
  ring: Float64Array,
  start: number,
  mean: number,
  { cosines, sines }: { readonly cosines: Float64Array; readonly sines: Float64Array },
): number {
  let [re, im] = [0, 0];
  for (let i = 0; i < LENGTH; i++) {
    const level = (ring[start + i] as number) - mean;
    re += level * (cosines[i] as number);
    im += level * (sines[i] as number);
  }
  return re * re + im * im;
}
