import type { StopShare } from "./session/proveSession";

/** What a stop error can come from, in the order of its columns. */
export const SOURCES = [
  { of: "fromZero", name: "the zero" },
  { of: "fromFit", name: "the fit" },
  { of: "fromHand", name: "the hand" },
] as const;

/**
 * One stop in words: inside what the lock takes, or what takes it out of that.
 *
 * The largest part is named alone only where it is too much by itself; else as many as it takes, since any of them
 * taken away would have opened the lock.
 *
 * @param tolerance - what the lock takes to either side, graduations
 */
export function shareWords(share: StopShare, tolerance: number): string {
  if (Math.abs(share.total) <= tolerance) return "inside the tolerance";
  const way = Math.sign(share.total);
  const names: string[] = [];
  let sum = 0;
  for (const { of, name } of SOURCES.toSorted((a, b) => way * (share[b.of] - share[a.of]))) {
    if (sum > tolerance) break;
    names.push(name);
    sum += way * share[of];
  }
  return names.length === 1 ? `mostly ${names[0]}` : `${names.slice(0, -1).join(", ")} and ${names.at(-1)} together`;
}
