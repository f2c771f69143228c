import { handoverMissed } from "../../drill/marking/jobMissed";
import type { HandoverResult } from "../../handover/run/checkRun";
import type { JobEnd } from "./jobNote";

/** What a handover has come to. */
export function handoverEnd(result: HandoverResult): JobEnd {
  const { isHandedOver, isHandsOff, missing, faults, steps, undoneSteps, fit } = result;
  return {
    kind: "handover",
    missed: handoverMissed(result),
    details: {
      isHandedOver,
      isHandsOff,
      missing: [...missing],
      faults: faults.map(({ code, step, at_ms, isUndone }) => ({ code, step, at_ms, isUndone })),
      steps,
      undoneSteps,
      ...(fit && { fit: { isTogether: fit.isTogether, faults: [...fit.faults], skipped: [...fit.skipped] } }),
    },
  };
}
