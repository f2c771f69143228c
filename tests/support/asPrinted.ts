/**
 * A number written the way a published one is: with as many decimals.
 *
 * Comparing the two texts allows half a unit in the last printed digit and no more.
 *
 * @param actual - what was calculated
 * @param published - the number as printed, such as "0.0624"
 */
export function asPrinted(actual: number, published: string): string {
  const [, decimals = ""] = published.split(".");
  return actual.toFixed(decimals.length);
}
