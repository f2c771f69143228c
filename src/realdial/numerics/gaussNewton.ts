import { LeastSquares } from "./leastSquares";

/**
 * Puts in one weighed residual and its slope by each parameter.
 *
 * @param slopes - may be one array used again and again
 */
export type AddResidual = (residual: number, slopes: ArrayLike<number>, weight: number) => void;

/**
 * Makes a sum of squares small by steps of Gauss-Newton, damped where a step makes it larger (D. Marquardt 1963).
 *
 * @param parameters - where it begins; becomes where it ends
 * @param residualsAt - calls `add` for each residual at the given parameters
 * @param steps - at most so many
 * @returns the mean weighed square at the end; NaN where no residual was put in
 */
export function gaussNewton(
  parameters: Float64Array,
  residualsAt: (parameters: Float64Array, add: AddResidual) => void,
  steps: number,
): number {
  const equations = new LeastSquares(parameters.length);
  const step = new Float64Array(parameters.length);
  let damping = LEAST_DAMPING;
  let best = meanSquare(equations, parameters, residualsAt);
  for (let k = 0; k < steps && equations.solveInto(step, damping); k++) {
    const tried = parameters.map((one, i) => one + (step[i] as number));
    const now = meanSquare(equations, tried, residualsAt);
    if (now < best) {
      const isDone = best - now < SMALL_GAIN * best;
      parameters.set(tried);
      best = now;
      damping = Math.max(LEAST_DAMPING, damping / 10);
      if (isDone) break;
    } else {
      meanSquare(equations, parameters, residualsAt);
      damping *= 30;
    }
  }
  return best;
}

const LEAST_DAMPING = 1e-6;
/** A step that gains a smaller share than this is the last. */
const SMALL_GAIN = 1e-9;

/** Puts the residuals at given parameters into the equations. @returns their mean weighed square */
function meanSquare(
  equations: LeastSquares,
  parameters: Float64Array,
  residualsAt: (parameters: Float64Array, add: AddResidual) => void,
): number {
  let [sum, weights] = [0, 0];
  equations.clear();
  residualsAt(parameters, (residual, slopes, weight) => {
    equations.add(slopes, -residual, weight);
    sum += weight * residual * residual;
    weights += weight;
  });
  return sum / weights;
}
