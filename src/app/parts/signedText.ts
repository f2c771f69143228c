/**
 * A signed size to a tenth: "+0.4", "−1.2", "0.0".
 *
 * @param value - graduations
 */
export function signedText(value: number): string {
  const text = Math.abs(value).toFixed(1);
  if (text === "0.0") return text;
  return `${value > 0 ? "+" : "−"}${text}`;
}
