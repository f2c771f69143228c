import type { FitCheck } from "../fitCheck";
import { CHECK_SET, type CheckSet, checksOf, isInSet } from "../fitChecks";
import type { FitFault } from "../fitFaultCode";
import { FOUND_BY } from "../foundBy";
import type { DrawnFit } from "./drawFit";

/** What finding the faults of a fit came to. */
export interface InspectionResult {
  /** What was wrong. */
  readonly faults: readonly FitFault[];
  /** What was named; none for "nothing is wrong", null where no answer was given. */
  readonly named: readonly FitFault[] | null;
  /** Checks that were not made. */
  readonly skipped: readonly FitCheck[];
  /** Which checks there were; left out for the first set. */
  readonly checkSet?: CheckSet;
}

/** Sums up an answer. @param checks - that were made */
export const inspectionResult = (
  { assembly, faults }: Pick<DrawnFit, "assembly" | "faults">,
  named: readonly FitFault[] | null,
  checks: readonly FitCheck[],
): InspectionResult => ({
  faults,
  named,
  skipped: checksOf(assembly).filter((check) => !checks.includes(check)),
  checkSet: CHECK_SET,
});

/** Faults that there were and that were not named. */
export const overlooked = ({ faults, named }: Pick<InspectionResult, "faults" | "named">): readonly FitFault[] =>
  faults.filter((fault) => named?.includes(fault) !== true);

/** Faults that were named and that there were not. */
export const unfounded = ({ faults, named }: Pick<InspectionResult, "faults" | "named">): readonly FitFault[] =>
  named?.filter((fault) => !faults.includes(fault)) ?? [];

/** Whether no check that was made shows a fault; one that there was not yet was not made. */
const isUnseen = (fault: FitFault, { skipped, checkSet }: Pick<InspectionResult, "skipped" | "checkSet">) =>
  FOUND_BY[fault].every((check) => skipped.includes(check) || !isInSet(check, checkSet));

/** Right answers that no check tells: each fault named unseen, or "nothing is wrong" without every check, which is one. */
function guesses(result: InspectionResult): number {
  const { faults, named, skipped } = result;
  if (named?.length === 0) return skipped.length > 0 ? 1 : 0;
  return faults.filter((fault) => named?.includes(fault) === true && isUnseen(fault, result)).length;
}

/** Faults overlooked, unfounded ones and guesses, together. */
export const inspectionMistakes = (result: InspectionResult): number =>
  overlooked(result).length + unfounded(result).length + guesses(result);

/** Whether no check that was made shows what was named; to say that nothing is wrong takes every check. */
export function isGuessed(result: Pick<InspectionResult, "named" | "skipped" | "checkSet">): boolean {
  const { named, skipped } = result;
  if (named === null) return false;
  if (named.length === 0) return skipped.length > 0;
  return named.some((fault) => isUnseen(fault, result));
}
