import { AROUND } from "../pose/ring";
import { CELLS } from "../strip/strip";
import type { Place } from "./judge";
import { correlation, goodCells, type Print, type Spectrum, spectrumOf } from "./print";

/** Places that one blur offers, */
const OFFERED = 7;
/** and as many as these, in any case, of those within reach of where the dial is expected. */
const EXPECTED = 3;

/** Offers places where the dial may be, by correlation over all turns at once. */
export class Seeker {
  private readonly print: Print;
  private readonly good: Float32Array;
  private readonly cut = new Float32Array(CELLS);
  private readonly alike = new Float64Array(AROUND);
  private readonly work = new Float64Array(AROUND);

  /** @param gain - of each cell, as the light on it gives it */
  constructor(print: Print, gain: Float32Array) {
    this.print = print;
    this.good = goodCells(gain);
  }

  /**
   * Places for some blurs (columns), of each the most alike first.
   *
   * @param isExpected - whether the dial can be there
   */
  offer(shown: Float32Array, blurs: readonly number[], isExpected: (turned: number) => boolean = () => false): Place[] {
    const spectrum = this.spectrumOf(shown);
    return blurs.flatMap((blur) => {
      correlation(spectrum, this.print.spectrumThrough(blur), this.alike, this.work);
      const peaks = peaksOf(this.alike);
      const expected = peaks.filter(({ at }) => isExpected(at)).slice(0, EXPECTED);
      return [...new Set([...peaks.slice(0, OFFERED), ...expected])].map(({ at }) => ({ turned: at, blur }));
    });
  }

  private spectrumOf(shown: Float32Array): Spectrum {
    for (let start = 0; start < CELLS; start += AROUND) this.cutRow(shown, start);
    return spectrumOf(this.cut, AROUND);
  }

  /** Takes what no print is so dark or bright as to show, such as a finger, for the mean of the rest. */
  private cutRow(shown: Float32Array, start: number): void {
    const [low, high] = this.print.limits;
    const isPrint = (cell: number) =>
      this.good[cell] === 1 && (shown[cell] as number) > low && (shown[cell] as number) < high;
    let [n, sum] = [0, 0];
    for (let cell = start; cell < start + AROUND; cell++) {
      if (!isPrint(cell)) continue;
      n++;
      sum += shown[cell] as number;
    }
    for (let cell = start; cell < start + AROUND; cell++) {
      this.cut[cell] = isPrint(cell) ? (shown[cell] as number) - sum / n : 0;
    }
  }
}

interface Peak {
  readonly at: number;
  readonly height: number;
}

/** The highest first. */
function peaksOf(alike: Float64Array): Peak[] {
  const peaks: Peak[] = [];
  for (let i = 0; i < AROUND; i++) {
    const height = alike[i] as number;
    const before = alike[(i + AROUND - 1) % AROUND] as number;
    const after = alike[(i + 1) % AROUND] as number;
    if (!(height > before && height >= after && height > 0)) continue;
    // The top of the parabola through the three.
    peaks.push({ at: i + (after - before) / (2 * (2 * height - before - after)), height });
  }
  return peaks.sort((one, other) => other.height - one.height);
}
