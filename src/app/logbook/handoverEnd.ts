import type { HandoverResult } from "../../handover/run/checkRun";
import type { JobEnd } from "./jobNote";

/** What a handover has come to. Faults that were undone in the debrief count: they were made. */
export function handoverEnd(result: HandoverResult): JobEnd {
  const { isHandedOver, isHandsOff, missing, faults, steps, undoneSteps } = result;
  const codes = [...missing, ...faults.map(({ code }) => code)];
  return {
    kind: "handover",
    missed: isHandedOver || codes.length > 0 ? codes : ["not-signed"],
    details: {
      isHandedOver,
      isHandsOff,
      missing: [...missing],
      faults: faults.map(({ code, step, at_ms, isUndone }) => ({ code, step, at_ms, isUndone })),
      steps,
      undoneSteps,
    },
  };
}
