import type { Visit } from "./visit";
import { visitFaults } from "./visitFault";
import type { VisitFault } from "./visitFaultCode";
import type { Condition } from "./wrongThing";

/** What a visit came to. */
export interface VisitResult {
  /** Whether the technician said that it is over. */
  readonly isLeft: boolean;
  /** What the years had done to the lock; empty where nothing was wrong. */
  readonly conditions: readonly Condition[];
  /** What the record names of it. */
  readonly found: readonly Condition[];
  readonly faults: readonly VisitFault[];
  /** Acts done, of any kind. */
  readonly acts: number;
}

/** What the last record that was written names; nothing where there is none. */
export function foundIn({ done }: Pick<Visit, "done">): readonly Condition[] {
  const written = done.findLast(({ act }) => act.type === "record.written")?.act;
  return written?.type === "record.written" ? written.record.found : [];
}

/** Sums up a visit as it is now. */
export const visitResult = (visit: Visit): VisitResult => ({
  isLeft: visit.isOver,
  conditions: visit.task.conditions,
  found: foundIn(visit),
  faults: visitFaults(visit),
  acts: visit.done.length,
});
