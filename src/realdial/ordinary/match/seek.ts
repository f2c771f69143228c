import { AROUND } from "../pose/ring";
import { CELLS } from "../strip/strip";
import type { Place } from "./judge";
import { correlation, type Print, type Spectrum, spectrumOf } from "./print";

/** Places that one blur offers at most. */
const OFFERED = 10;
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

  /** Places for some blurs (columns), best first for each. */
  offer(shown: Float32Array, blurs: readonly number[]): Place[] {
    const spectrum = this.spectrumOf(shown);
    return blurs.flatMap((blur) => {
      correlation(spectrum, this.print.spectrumThrough(blur), this.alike, this.work);
      return peaksOf(this.alike).map((turned) => ({ turned, blur }));
    });
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

function peaksOf(alike: Float64Array): number[] {
  const peaks: { readonly at: number; readonly height: number }[] = [];
  for (let i = 0; i < AROUND; i++) {
    const height = alike[i] as number;
    const isPeak =
      height > (alike[(i + AROUND - 1) % AROUND] as number) && height >= (alike[(i + 1) % AROUND] as number);
    if (isPeak && height > 0) peaks.push({ at: i, height });
  }
  return peaks
    .sort((one, other) => other.height - one.height)
    .slice(0, OFFERED)
    .map(({ at }) => at);
}
