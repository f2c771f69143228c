import type { TryResult } from "../../drill/marking/tryResult";
import type { PlannedTry } from "../../drill/sheet/planTries";

/** What a try that was lost with its page came to: made, and not right. */
export function lostTry({ station, repetition, combination }: PlannedTry): TryResult {
  const lost = { station, repetition, time_ms: 0, isBrokenOff: true };
  if (combination === null) {
    return {
      ...lost,
      kind: "zeroing",
      verdicts: { left: null, right: null },
      means: { left: null, right: null },
      refused: 0,
    };
  }
  return { ...lost, kind: "dialing", combination, opened: false, stopErrors: combination.map(() => null), faults: [] };
}
