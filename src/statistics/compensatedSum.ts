/**
 * Sum of a list of numbers, with the rounding error of every addition carried along and given back at the end.
 *
 * The error no longer grows with the length of the list. Source: Neumaier (1974), Z. Angew. Math. Mech. 54:39-51,
 * algorithm IV.
 *
 * @param values - any unit, finite; an empty list sums to 0
 * @returns same unit
 */
export function compensatedSum(values: readonly number[]): number {
  let sum = 0;
  let lost = 0;
  for (const value of values) {
    const next = sum + value;
    lost += Math.abs(sum) >= Math.abs(value) ? sum - next + value : value - next + sum;
    sum = next;
  }
  return sum + lost;
}
