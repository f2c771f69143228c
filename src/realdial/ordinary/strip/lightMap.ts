import { AROUND } from "../pose/ring";
import { pieceOf } from "./pieces";
import { CELLS, ROWS } from "./strip";

/** What stays on the dial while it turns: each cell shows gain · print + haze. */
export interface LightMap {
  readonly gain: Float32Array;
  readonly haze: Float32Array;
}

/** What is printed, as far as the light of a strip tells. @param print - is set */
export function printOf(strip: Float32Array, { gain, haze }: LightMap, print: Float32Array): void {
  for (let cell = 0; cell < CELLS; cell++) {
    const light = gain[cell] as number;
    print[cell] = light > 0 ? ((strip[cell] as number) - (haze[cell] as number)) / light : 0;
  }
}

/** A strip, how far left the dial had turned then (columns), and which of its pieces show the dial and no finger. */
export interface TurnedStrip {
  readonly strip: Float32Array;
  readonly turned: number;
  readonly fits: Uint8Array;
}

/** What a slow turn tells: the light, which stays, and the print, which turns. */
export interface Learned {
  readonly light: LightMap;
  readonly print: Float32Array;
}

const ROUNDS = 2;
/** How firmly a cell's gain is held to what it was, where little is printed that could tell it. */
const HELD = 0.02;
/** A point of the print is held to the middle of its row as if it had been seen so often (a share of the mean) there. */
const UNSEEN = 0.01;
/** A cell must have been seen so often. */
const SEEN = 5;
/** A cell shows the print when the print explains such a part of what it shows: under a finger, or the knob, it explains nothing. */
const EXPLAINED = 0.05;
/** Where the print varies less than this (mean square), nothing is to be explained. */
const BLANK = 0.002;

/**
 * Takes light and print apart, by turns: given the print, each cell's gain and haze are a straight line through what it
 * showed; given these, each point of the print is the mean of what all cells showed of it. What lies far off, such as a
 * finger, counts less: 1 / (1 + (off / scale)²), the weights of a Cauchy distribution.
 *
 * @param before - a first guess: the first picture, taken without a hand
 */
export function learnedFrom(strips: readonly TurnedStrip[], before: Learned): Learned {
  let { light, print } = before;
  for (let round = 0; round < ROUNDS; round++) {
    light = lightBehind(strips, print, light);
    print = printThrough(strips, light, print);
  }
  return { light, print };
}

/** The print at a column that is no whole number, in the row of a cell. */
function printAt(print: Float32Array, rowStart: number, column: number): number {
  const whole = Math.floor(column);
  const part = column - whole;
  const one = print[rowStart + (whole & (AROUND - 1))] as number;
  const next = print[rowStart + ((whole + 1) & (AROUND - 1))] as number;
  return one + (next - one) * part;
}

function lightBehind(strips: readonly TurnedStrip[], print: Float32Array, before: LightMap): LightMap {
  const gain = new Float32Array(CELLS);
  const haze = new Float32Array(CELLS);
  const line = new Line();
  for (let cell = 0; cell < CELLS; cell++) {
    const held = before.gain[cell] as number;
    if (held === 0) continue;
    line.through(strips, print, cell, { gain: held, haze: before.haze[cell] as number });
    if (!line.isSeen) continue;
    gain[cell] = line.slope(held);
    haze[cell] = line.offset(gain[cell] as number);
  }
  return { gain, haze };
}

/** A straight line through what a cell showed against what is printed there. */
class Line {
  private n = 0;
  private meanX = 0;
  private meanY = 0;
  private printed = 0;
  private shown = 0;
  private both = 0;

  through(
    strips: readonly TurnedStrip[],
    print: Float32Array,
    cell: number,
    was: { gain: number; haze: number },
  ): void {
    const column = cell & (AROUND - 1);
    const piece = pieceOf(cell);
    const scale = 0.15 * was.gain + 0.004;
    let [n, x, y, xx, xy, yy] = [0, 0, 0, 0, 0, 0];
    for (const { strip, turned, fits } of strips) {
      if (fits[piece] === 0) continue;
      const shown = strip[cell] as number;
      const is = printAt(print, cell - column, column - turned);
      const off = (shown - was.gain * is - was.haze) / scale;
      const weight = 1 / (1 + off * off);
      n += weight;
      x += weight * is;
      y += weight * shown;
      xx += weight * is * is;
      xy += weight * is * shown;
      yy += weight * shown * shown;
    }
    this.n = n;
    this.meanX = x / n;
    this.meanY = y / n;
    this.printed = xx - (x * x) / n;
    this.shown = yy - (y * y) / n;
    this.both = xy - (x * y) / n;
  }

  /** Whether the print explains what was shown, or nothing is printed that could. */
  get isSeen(): boolean {
    if (this.n < SEEN) return false;
    if (this.printed <= BLANK * this.n) return true;
    return this.both > 0 && this.both * this.both >= EXPLAINED * this.printed * this.shown;
  }

  slope(held: number): number {
    return Math.max(0, (this.both + HELD * this.n * held) / (this.printed + HELD * this.n));
  }

  offset(slope: number): number {
    return this.meanY - slope * this.meanX;
  }
}

function printThrough(strips: readonly TurnedStrip[], light: LightMap, before: Float32Array): Float32Array {
  const sums = new Float64Array(CELLS);
  const weights = new Float64Array(CELLS);
  const own = new Float32Array(CELLS);
  // Whether a piece fits does not matter here: one whose print is not known yet never does.
  for (const { strip, turned } of strips) {
    printOf(strip, light, own);
    for (let cell = 0; cell < CELLS; cell++) {
      const column = cell & (AROUND - 1);
      const start = cell - column;
      // The dial had turned left by `turned`: there this point of the print was seen.
      const back = column + turned;
      const other = start + (Math.round(back) & (AROUND - 1));
      const shown = printAt(own, start, back);
      const gain = light.gain[other] as number;
      const off = (shown - (before[cell] as number)) / 0.3;
      const weight = (gain * gain) / (1 + off * off);
      sums[cell] = (sums[cell] as number) + weight * shown;
      weights[cell] = (weights[cell] as number) + weight;
    }
  }
  const [low, high] = limitsOf(before);
  const blank = middlesOf(before);
  const held = (UNSEEN / CELLS) * weights.reduce((sum, weight) => sum + weight, 0);
  return Float32Array.from(sums, (sum, cell) => {
    const level = (sum + held * (blank[Math.floor(cell / AROUND)] as number)) / ((weights[cell] as number) + held);
    return Math.min(high, Math.max(low, level));
  });
}

/** The level in the middle of all that each row has. */
const middlesOf = (print: Float32Array): readonly number[] =>
  Array.from({ length: ROWS }, (_, row) => {
    const sorted = print.slice(row * AROUND, (row + 1) * AROUND).sort();
    return sorted[AROUND >> 1] as number;
  });

/** Between what a print's levels lie, but for the farthest hundredth, and half as far again: the rest is no print. */
export function limitsOf(print: Float32Array): readonly [number, number] {
  const sorted = Float32Array.from(print).sort();
  const low = sorted[Math.floor(0.01 * CELLS)] as number;
  const high = sorted[Math.floor(0.99 * CELLS)] as number;
  return [low - (high - low) / 2, high + (high - low) / 2];
}
