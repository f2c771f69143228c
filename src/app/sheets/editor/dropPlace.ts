/**
 * Where a dragged thing of a list comes to lie.
 *
 * @param middles - middle of each thing along the list, the dragged one's included
 * @param from - index of the dragged one
 * @param at - where the pointer is, on the same scale
 * @returns index among all things once it has been moved
 */
export function dropPlace(middles: readonly number[], from: number, at: number): number {
  return middles.filter((middle, index) => index !== from && middle < at).length;
}
