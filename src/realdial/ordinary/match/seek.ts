import { AROUND } from "../pose/ring";
import { CELLS } from "../strip/strip";
import type { Place } from "./judge";
import { correlation, type Print, type Spectrum, spectrumOf } from "./print";

/** Places that one blur offers at most, and all blurs together. */
const OFFERED = 10;
const IN_ALL = 28;
/** Of those within reach of where the dial is expected, so many of each blur are offered in any case. */
const EXPECTED = 3;
/** What is shown is cut off so many SDs from its middle, so that a bright finger does not outshine the print. */
const CUT = 2.5;

/** Offers places where the dial may be, by correlation over all turns at once. */
export class Seeker {
  private readonly print: Print;
  private readonly good: Uint8Array;
  private readonly cut = new Float32Array(CELLS);
  private readonly alike = new Float64Array(AROUND);
  private readonly work = new Float64Array(AROUND);

  constructor(print: Print, good: Uint8Array) {
    this.print = print;
    this.good = good;
  }

  /**
   * Places for some blurs (columns), the most alike first.
   *
   * @param isExpected - whether the dial can be there
   */
  offer(shown: Float32Array, blurs: readonly number[], isExpected: (turned: number) => boolean = () => false): Place[] {
    const spectrum = this.spectrumOf(shown);
    const offers = blurs.flatMap((blur) => {
      correlation(spectrum, this.print.spectrumThrough(blur), this.alike, this.work);
      const peaks = peaksOf(this.alike);
      const expected = new Set(peaks.filter(({ at }) => isExpected(at)).slice(0, EXPECTED));
      return peaks
        .filter((peak, i) => i < OFFERED || expected.has(peak))
        .map((peak) => ({ ...peak, blur, isExpected: expected.has(peak) }));
    });
    return offers
      .sort((one, other) => other.height - one.height)
      .filter((offer, i) => i < IN_ALL || offer.isExpected)
      .map(({ at, blur }) => ({ turned: at, blur }));
  }

  private spectrumOf(shown: Float32Array): Spectrum {
    for (let start = 0; start < CELLS; start += AROUND) this.cutRow(shown, start);
    return spectrumOf(this.cut, AROUND);
  }

  private cutRow(shown: Float32Array, start: number): void {
    let [n, sum, squares] = [0, 0, 0];
    for (let cell = start; cell < start + AROUND; cell++) {
      if (this.good[cell] === 0) continue;
      const level = Math.max(-1, Math.min(4, shown[cell] as number));
      n++;
      sum += level;
      squares += level * level;
    }
    const mean = sum / Math.max(1, n);
    const far = CUT * Math.sqrt(Math.max(0, squares / Math.max(1, n) - mean * mean));
    for (let cell = start; cell < start + AROUND; cell++) {
      const off = (shown[cell] as number) - mean;
      this.cut[cell] = this.good[cell] === 0 ? 0 : Math.max(-far, Math.min(far, off));
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
