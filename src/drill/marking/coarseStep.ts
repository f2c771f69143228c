import type { Fault } from "../../dialing/fault";
import type { SourceDescription } from "../../realdial/sources/sourceDescription";

/**
 * Whether a fault is a stop no farther off than the step of the coarse source that made it. A hand cannot stop there where it
 * means to, so that is not judged: what is left is count and order. Farther off it is another number.
 */
export function isOfCoarseStep(
  { code, size }: Pick<Fault, "code" | "size">,
  sources: readonly SourceDescription[] = [],
): boolean {
  const isStop = code === "stopped-short" || code === "ran-past";
  return isStop && sources.some(({ isCoarse, resolution }) => isCoarse && size <= resolution);
}

/** The faults that are judged of a dial that something turned: none that its coarse steps make. */
export const judgedFaults = <Made extends Pick<Fault, "code" | "size">>(
  faults: readonly Made[],
  sources: readonly SourceDescription[] | undefined,
): Made[] => faults.filter((fault) => !isOfCoarseStep(fault, sources));
