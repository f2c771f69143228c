/** Prints a line of a bench. */
export const tell = (text: string): void => {
  process.stdout.write(`${text}\n`);
};

/** A value below which a share of all lies; NaN of none. @param share - in [0, 1] */
export function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((one, other) => one - other);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

/** The half, 19 of 20 and the longest of times, ms, in words. */
export const timesText = (times: readonly number[]): string =>
  `p50 ${quantile(times, 0.5).toFixed(1)} ms, p95 ${quantile(times, 0.95).toFixed(1)} ms, longest ${Math.max(...times).toFixed(0)} ms`;

export const sleep = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));
