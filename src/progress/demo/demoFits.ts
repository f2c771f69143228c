import type { FitCheck } from "../../fitting/fitCheck";
import { checksOf } from "../../fitting/fitChecks";
import type { FitFault } from "../../fitting/fitFaultCode";
import { stageOf } from "../../fitting/fitStage";
import { lockToFit } from "../../fitting/fittedLock";
import { fittingResult } from "../../fitting/fittingResult";
import { FOUND_BY } from "../../fitting/foundBy";
import { drawInspection, fitWith } from "../../fitting/inspect/drawFit";
import { inspectionResult } from "../../fitting/inspect/inspectionResult";
import { fittingEnd } from "../../records/job/fittingEnd";
import { inspectionEnd } from "../../records/job/inspectionEnd";
import type { DemoEnd } from "./demoWeek";

/** A dial that is fitted part by part. @param left - what is left wrong, for want of the checks that tell it */
export const fitted =
  (...left: readonly FitFault[]): DemoEnd =>
  (profile, chance) => {
    const lock = lockToFit(profile, chance);
    const { assembly, moves } = fitWith(left, lock, chance);
    const skipped = left.flatMap((fault) => FOUND_BY[fault]);
    const checks = checksOf(assembly).filter((check) => !skipped.includes(check));
    return fittingEnd(
      fittingResult(assembly, lock, { acts: moves, checks, stopped: null, declared: stageOf(assembly, lock) }),
    );
  };

/** A fit that somebody judges. */
interface Judged {
  /** What is wrong with it. */
  readonly has: readonly FitFault[];
  /** What is named. */
  readonly names: readonly FitFault[];
  /** Checks that are not made. */
  readonly skips?: readonly FitCheck[];
}

/** A fit that is judged as written; any fit, judged right, where nothing is. */
export const judged =
  (how?: Judged): DemoEnd =>
  (profile, chance) => {
    const drawn =
      how === undefined ? drawInspection(profile, chance) : fitWith(how.has, lockToFit(profile, chance), chance);
    const checks = checksOf(drawn.assembly).filter((check) => how?.skips?.includes(check) !== true);
    return inspectionEnd(inspectionResult(drawn, how?.names ?? drawn.faults, checks));
  };
