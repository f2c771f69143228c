import type { Attempt } from "../../dialing/attempt";
import { faultsCounted } from "../../drill/marking/tryResult";
import type { Station } from "../../drill/sheet/sheet";
import { type AttemptOutcome, attemptOutcome } from "../attemptOutcome";

/** What a try that has ended came to, by what its station asks: some of the numbers are dialed without a bolt to draw. */
export function stationOutcome(attempt: Attempt, station: Station): AttemptOutcome {
  const outcome = attemptOutcome(attempt);
  if (station.kind !== "dialing" || station.upTo === undefined) return outcome;
  const faults = faultsCounted(outcome, station);
  return { ...outcome, faults: [...faults], opened: faults.length === 0 };
}
