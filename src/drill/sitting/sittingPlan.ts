import type { Sheet } from "../sheet/sheet";
import type { SittingPlan } from "./sittingMachine";

/**
 * What the chart of a sitting must know of a sheet. A sheet without sitting rules is practice: pauses are free, a reload
 * goes on, and there is no limit and no question.
 */
export function sittingPlan({ stations, sitting }: Sheet): SittingPlan {
  return {
    tries: stations.reduce((sum, { repetitions }) => sum + repetitions, 0),
    questions: (sitting?.questions?.topics ?? []).reduce((sum, { count }) => sum + count, 0),
    pauseAllowed: sitting?.pauseAllowed ?? true,
    onReload: sitting?.onReload ?? "resume",
    timeLimit_ms: sitting?.timeLimit_s === undefined ? null : 1000 * sitting.timeLimit_s,
  };
}
