import { levenbergMarquardt } from "ml-levenberg-marquardt";
import { compensatedSum } from "./compensatedSum";
import { mean } from "./sample";

/** Best exponential A + B e^(-alpha (x - first)), first being the smallest x, and whether the search ran into an end of the rates it allows. */
export interface ExponentialFit {
  readonly asymptote: number;
  readonly gap: number;
  readonly rate: number;
  /** As good as a straight line, as good as a single jump, or a true curve in between. */
  readonly edge: "straightest" | "steepest" | "none";
}

/** The curve in standard form: x from 0 to 1, y of unit size; the rate as its logarithm, so that it stays above 0. */
interface StandardCurve {
  readonly asymptote: number;
  readonly gap: number;
  readonly logRate: number;
}

/** Rate in the whole range below which the curve is as good as a straight line: it bends by about one part in 80. */
const STRAIGHTEST = 0.1;
/** Decay from one attempt to the next beyond which all is over at once. */
const STEEPEST_STEP = Math.log(100);
const STARTS = 60;
const ITERATIONS = 200;

/** Best A and B for a given rate: a straight line in e^(-rate x). */
function lineThrough(xs: readonly number[], ys: readonly number[], logRate: number): StandardCurve & { error: number } {
  const decay = xs.map((x) => Math.exp(-Math.exp(logRate) * x));
  const decayMean = mean(decay);
  const yMean = mean(ys);
  const products = decay.map((e, i) => (e - decayMean) * ((ys[i] ?? yMean) - yMean));
  const gap = compensatedSum(products) / compensatedSum(decay.map((e) => (e - decayMean) ** 2));
  const asymptote = yMean - gap * decayMean;
  const error = compensatedSum(ys.map((y, i) => (y - asymptote - gap * (decay[i] ?? 0)) ** 2));
  return { asymptote, gap, logRate, error };
}

function bestStart(xs: readonly number[], ys: readonly number[], lowest: number, highest: number): StandardCurve {
  const starts = Array.from({ length: STARTS }, (_, i) =>
    lineThrough(xs, ys, lowest + ((highest - lowest) * i) / (STARTS - 1)),
  );
  return starts.reduce((best, start) => (start.error < best.error ? start : best));
}

function refined(xs: readonly number[], ys: readonly number[], start: StandardCurve, bounds: readonly number[]) {
  const [lowest = start.logRate, highest = start.logRate] = bounds;
  const { parameterValues } = levenbergMarquardt(
    { x: xs, y: ys },
    ([asymptote = 0, gap = 0, logRate = 0]) =>
      (x) =>
        asymptote + gap * Math.exp(-Math.exp(logRate) * x),
    {
      initialValues: [start.asymptote, start.gap, start.logRate],
      minValues: [-Infinity, -Infinity, lowest],
      maxValues: [Infinity, Infinity, highest],
      jacobianFunction:
        ([, gap = 0, logRate = 0]) =>
        (x) => {
          const exponent = Math.exp(logRate) * x;
          const decay = Math.exp(-exponent);
          return [1, decay, -gap * exponent * decay];
        },
      // Zero, so that every improvement counts: the size of a residual says nothing about convergence.
      errorTolerance: 0,
      maxIterations: ITERATIONS,
    },
  );
  // A and B are exact once the rate is known, whatever the last step left of them.
  return lineThrough(xs, ys, parameterValues[2] ?? start.logRate);
}

function smallestStep(xs: readonly number[]): number {
  const sorted = [...new Set(xs)].sort((a, b) => a - b);
  return Math.min(...sorted.slice(1).map((x, i) => x - (sorted[i] ?? x)));
}

function edgeOf(logRate: number, lowest: number, highest: number): ExponentialFit["edge"] {
  const nearly = 1e-6;
  if (logRate <= lowest + nearly) return "straightest";
  return logRate >= highest - nearly ? "steepest" : "none";
}

/**
 * Least-squares fit of an exponential to points that are not all on one level.
 *
 * For a fixed rate the best A and B are a linear fit (Golub & Pereyra 1973, SIAM J. Numer. Anal. 10:413-432), so the
 * best of a row of rates starts the Levenberg-Marquardt search, which then cannot end in a far-off valley.
 *
 * @param xs - at least 4 different ones
 * @param ys - as many, any unit, not all the same
 * @returns A and B in the unit of the ys, alpha per unit of the xs
 */
export function exponentialFit(xs: readonly number[], ys: readonly number[]): ExponentialFit {
  const first = Math.min(...xs);
  const range = Math.max(...xs) - first;
  const level = mean(ys);
  const size = Math.max(...ys.map((y) => Math.abs(y - level)));
  const unitXs = xs.map((x) => (x - first) / range);
  const unitYs = ys.map((y) => (y - level) / size);

  const lowest = Math.log(STRAIGHTEST);
  const highest = Math.log(STEEPEST_STEP / smallestStep(unitXs));
  const start = bestStart(unitXs, unitYs, lowest, highest);
  const { asymptote, gap, logRate } = refined(unitXs, unitYs, start, [lowest, highest]);
  return {
    asymptote: level + size * asymptote,
    gap: size * gap,
    rate: Math.exp(logRate) / range,
    edge: edgeOf(logRate, lowest, highest),
  };
}
