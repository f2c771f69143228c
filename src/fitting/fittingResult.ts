import type { Assembly } from "./assembly";
import { fitOf } from "./fit";
import type { FitCheck } from "./fitCheck";
import { checksOf } from "./fitChecks";
import { fitFaults } from "./fitFault";
import type { FitFault } from "./fitFaultCode";
import type { FitStage } from "./fitStage";
import type { LockToFit } from "./fittedLock";
import type { FittingContext } from "./fittingMachine";
import { FITTING } from "./trainingValues";

/** What a fitting came to. */
export interface FittingResult {
  /** How far it was together when it was said to be ready; null where it never was. */
  readonly declared: FitStage | null;
  /** What was wrong with the fit; none where it was not together. */
  readonly faults: readonly FitFault[];
  /** Checks that were not made since a part was last moved. */
  readonly skipped: readonly FitCheck[];
  /** Parts moved. */
  readonly moves: number;
  /** Spindles taken from the tray in place of the first. */
  readonly spindlesUsed: number;
}

/** Sums up a fitting as it stands. */
export function fittingResult(
  assembly: Assembly,
  lock: LockToFit,
  { declared, checks, acts }: FittingContext,
): FittingResult {
  const fit = fitOf(assembly, lock);
  return {
    declared,
    faults: fit === null ? [] : fitFaults(fit, assembly, lock.sizes),
    skipped: checksOf(assembly).filter((check) => !checks.includes(check)),
    moves: acts,
    spindlesUsed: FITTING.spares - assembly.spares,
  };
}
