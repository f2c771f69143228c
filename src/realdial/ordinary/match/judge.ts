import { AROUND } from "../pose/ring";
import { BAND_ROWS, beginOf, cellOf, PIECE_COLUMNS as LENGTH, PIECES } from "../strip/pieces";
import { CELLS } from "../strip/strip";
import { DOUBLE, goodCells, type Print } from "./print";
import { type Slant, TurnAndShift } from "./turnAndShift";

/** What one piece can speak against a place at most: a finger is no worse than a blank. */
const CAP = 0.6;
/** A piece counts at most so many times as much as the middle one. */
const MOST = 4;
/** A piece fits whose part left unexplained is at most this. */
const FITS = 0.4;

/** Where the dial may be, columns turned left, and the blur it was seen with. */
export interface Place {
  readonly turned: number;
  readonly blur: number;
}

/** How well a place explains what is shown. */
export interface Judged extends Place {
  /** Part left unexplained, piece by piece capped: 0 to 0.6. */
  readonly cost: number;
  /** Part of the ring (by what is printed on it) that fits. */
  readonly inSight: number;
  /** The same piece by piece, and by how much is printed in each, its part of all. */
  readonly unexplained: Float32Array;
  readonly printed: Float32Array;
}

/** A place made exact. */
export interface Refined extends Judged {
  /** Standard error of how far it is turned, by how its pieces disagree: columns. */
  readonly error: number;
}

/** Judges places by what each piece of the ring shows. Gain and offset of a piece are free: shadows change them. */
export class Judge {
  private readonly print: Print;
  /** 1 or 0: to multiply by it is several times as quick as to ask. */
  private readonly good: Float32Array;
  private readonly slant: Slant;
  private readonly shown = new Float32Array(CELLS);
  private readonly counts = new Float64Array(PIECES);
  private readonly sums = new Float64Array(PIECES);
  private readonly squares = new Float64Array(PIECES);
  /** Of the place judged last: what is printed in each piece, and the part left unexplained. */
  private readonly amounts = new Float64Array(PIECES);
  private readonly unexplained = new Float64Array(PIECES);

  /** @param gain - of each cell, as the light on it gives it */
  constructor(print: Print, gain: Float32Array, slant: Slant) {
    this.print = print;
    this.slant = slant;
    this.good = goodCells(gain);
  }

  /** Takes what a picture shows of the print. */
  look(shown: Float32Array): void {
    for (let cell = 0; cell < CELLS; cell++) this.shown[cell] = (shown[cell] as number) * (this.good[cell] as number);
    for (let piece = 0; piece < PIECES; piece++) {
      let n = 0;
      let sum = 0;
      let squares = 0;
      for (let row = 0; row < BAND_ROWS; row++) {
        const from = cellOf(piece, row);
        for (let cell = from; cell < from + LENGTH; cell++) {
          const level = this.shown[cell] as number;
          n += this.good[cell] as number;
          sum += level;
          squares += level * level;
        }
      }
      this.counts[piece] = n;
      this.sums[piece] = sum;
      this.squares[piece] = squares;
    }
  }

  /** Judges a place. */
  judge({ turned, blur }: Place): Judged {
    const print = this.print.through(blur);
    for (let piece = 0; piece < PIECES; piece++) this.compare(print, piece, turned);
    const most = MOST * middleOf(this.amounts);
    const printed = new Float32Array(PIECES);
    const unexplained = new Float32Array(PIECES);
    let amount = 0;
    for (let piece = 0; piece < PIECES; piece++) amount += Math.min(most, this.amounts[piece] as number);
    let cost = 0;
    let inSight = 0;
    for (let piece = 0; piece < PIECES; piece++) {
      const part = Math.min(most, this.amounts[piece] as number) / (amount || 1);
      const left = Math.min(CAP, this.unexplained[piece] as number);
      printed[piece] = part;
      unexplained[piece] = left;
      cost += part * left;
      if (left < FITS) inSight += part;
    }
    return { turned, blur, cost, inSight, unexplained, printed };
  }

  /** Which pieces fit at the place judged last: 1 for each that does. */
  fits(): Uint8Array {
    return Uint8Array.from(this.unexplained, (left) => (left < FITS ? 1 : 0));
  }

  private compare(print: Float32Array, piece: number, turned: number): void {
    const back = beginOf(piece) - turned;
    const whole = Math.floor(back);
    const part = back - whole;
    const begin = whole & (AROUND - 1);
    let sum = 0;
    let squares = 0;
    let product = 0;
    for (let row = 0; row < BAND_ROWS; row++) {
      const cells = cellOf(piece, row);
      const at = DOUBLE * Math.floor(cells / AROUND) + begin;
      let here = print[at] as number;
      for (let i = 0; i < LENGTH; i++) {
        const next = print[at + i + 1] as number;
        const is = (here + (next - here) * part) * (this.good[cells + i] as number);
        sum += is;
        squares += is * is;
        product += is * (this.shown[cells + i] as number);
        here = next;
      }
    }
    const n = Math.max(1, this.counts[piece] as number);
    const shownSum = this.sums[piece] as number;
    const printed = squares - (sum * sum) / n;
    const spread = (this.squares[piece] as number) - (shownSum * shownSum) / n;
    const together = product - (sum * shownSum) / n;
    this.amounts[piece] = printed;
    this.unexplained[piece] =
      together <= 0 || printed <= 0 || spread <= 0 ? 1 : 1 - (together * together) / (printed * spread);
  }

  /**
   * Makes a place exact: how far each piece that fits lies from it, by its slopes, then one turn for all of them and a
   * small shift of the whole face, which a camera that moved leaves behind.
   *
   * @param offsets - if given, is set to what each piece says alone (columns), with its weight
   */
  refine(place: Place, offsets?: { readonly at: Float64Array; readonly weight: Float64Array }): Refined {
    let { turned } = place;
    let error = 0;
    for (let step = 0; step < 4; step++) {
      const solved = this.step({ ...place, turned }, step === 3 ? offsets : undefined);
      turned += solved.turn;
      error = solved.error;
      if (Math.abs(solved.turn) < 0.003 && offsets === undefined) break;
    }
    return { ...this.judge({ ...place, turned }), error };
  }

  private step(place: Place, offsets?: { readonly at: Float64Array; readonly weight: Float64Array }) {
    this.judge(place);
    const print = this.print.through(place.blur);
    const solved = new TurnAndShift(this.slant);
    for (let piece = 0; piece < PIECES; piece++) {
      const trust = Math.max(0, 1 - (this.unexplained[piece] as number) / FITS);
      const { offset, weight } = trust === 0 ? NOTHING : this.offsetIn(print, piece, place.turned);
      if (offsets !== undefined) {
        offsets.at[piece] = offset;
        offsets.weight[piece] = trust * trust * weight;
      }
      if (Math.abs(offset) < 3) solved.add(piece, offset, trust * trust * weight);
    }
    return solved.solved();
  }

  /** How many columns farther left a piece lies than the place says. */
  private offsetIn(print: Float32Array, piece: number, turned: number): { offset: number; weight: number } {
    const back = beginOf(piece) - turned;
    const whole = Math.floor(back);
    const part = back - whole;
    const begin = whole & (AROUND - 1);
    // Sums of print, slope and shown, and of their products; what does not show the print adds nothing.
    let [p, s, pp, ps, ss, pz, sz] = [0, 0, 0, 0, 0, 0, 0];
    for (let row = 0; row < BAND_ROWS; row++) {
      const cells = cellOf(piece, row);
      const start = DOUBLE * Math.floor(cells / AROUND);
      const at = start + begin;
      let before = print[begin === 0 ? at + AROUND - 1 : at - 1] as number;
      for (let i = 0; i < LENGTH; i++) {
        const good = this.good[cells + i] as number;
        const shown = this.shown[cells + i] as number;
        const here = print[at + i] as number;
        const next = print[at + i + 1] as number;
        const after = print[at + i + 2] as number;
        const is = (here + (next - here) * part) * good;
        const slope = (((next - before) * (1 - part) + (after - here) * part) / 2) * good;
        p += is;
        s += slope;
        pp += is * is;
        ps += is * slope;
        ss += slope * slope;
        pz += is * shown;
        sz += slope * shown;
        before = here;
      }
    }
    const n = this.counts[piece] as number;
    if (n === 0) return NOTHING;
    // Fits shown = offset + gain (print - d slope): d from the two unknowns gain and gain d, the means taken out.
    const z = this.sums[piece] as number;
    const a = pp - (p * p) / n;
    const b = ps - (p * s) / n;
    const c = ss - (s * s) / n;
    const e = pz - (p * z) / n;
    const f = sz - (s * z) / n;
    const determinant = a * c - b * b;
    if (!(determinant > 1e-9 * a * c)) return NOTHING;
    const gain = (c * e - b * f) / determinant;
    return gain <= 0 ? NOTHING : { offset: -(a * f - b * e) / determinant / gain, weight: c };
  }
}

const middleOf = (amounts: Float64Array): number => amounts.slice().sort()[PIECES >> 1] as number;

const NOTHING = { offset: 0, weight: 0 };
