/**
 * Solves a small dense system by elimination with the largest pivot of each column.
 *
 * @param matrix - n × n, row by row; is used up
 * @param right - n values; becomes the solution
 * @returns whether it has one: false where a pivot is lost in rounding, and `right` then means nothing
 */
export function solve(matrix: Float64Array, right: Float64Array): boolean {
  const n = right.length;
  const scale = largestOf(matrix);
  for (let column = 0; column < n; column++) {
    const pivot = largestBelow(matrix, n, column);
    if (!(Math.abs(matrix[pivot * n + column] as number) > 1e-14 * scale)) return false;
    swapRows(matrix, right, n, pivot, column);
    for (let row = column + 1; row < n; row++) eliminate(matrix, right, n, row, column);
  }
  for (let row = n - 1; row >= 0; row--) substitute(matrix, right, n, row);
  return true;
}

function largestOf(matrix: Float64Array): number {
  let largest = 0;
  for (let k = 0; k < matrix.length; k++) largest = Math.max(largest, Math.abs(matrix[k] as number));
  return largest;
}

function largestBelow(matrix: Float64Array, n: number, column: number): number {
  let best = column;
  for (let row = column + 1; row < n; row++) {
    if (Math.abs(matrix[row * n + column] as number) > Math.abs(matrix[best * n + column] as number)) best = row;
  }
  return best;
}

function swapRows(matrix: Float64Array, right: Float64Array, n: number, one: number, other: number): void {
  if (one === other) return;
  for (let k = 0; k < n; k++) {
    const held = matrix[one * n + k] as number;
    matrix[one * n + k] = matrix[other * n + k] as number;
    matrix[other * n + k] = held;
  }
  const held = right[one] as number;
  right[one] = right[other] as number;
  right[other] = held;
}

function eliminate(matrix: Float64Array, right: Float64Array, n: number, row: number, column: number): void {
  const factor = (matrix[row * n + column] as number) / (matrix[column * n + column] as number);
  if (factor === 0) return;
  for (let k = column; k < n; k++) {
    matrix[row * n + k] = (matrix[row * n + k] as number) - factor * (matrix[column * n + k] as number);
  }
  right[row] = (right[row] as number) - factor * (right[column] as number);
}

function substitute(matrix: Float64Array, right: Float64Array, n: number, row: number): void {
  let rest = right[row] as number;
  for (let k = row + 1; k < n; k++) rest -= (matrix[row * n + k] as number) * (right[k] as number);
  right[row] = rest / (matrix[row * n + row] as number);
}
