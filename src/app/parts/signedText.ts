/**
 * A size with its sign: "+0.4", "−1.2", "0.0".
 *
 * @param value - graduations
 */
export function signedText(value: number, decimals = 1): string {
  const text = Math.abs(value).toFixed(decimals);
  if (Number(text) === 0) return text;
  return `${value > 0 ? "+" : "−"}${text}`;
}
