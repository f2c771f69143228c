import type { Attempt } from "../../dialing/attempt";
import { faultsCounted } from "../../drill/marking/tryResult";
import type { Station } from "../../drill/sheet/sheet";
import { type AttemptOutcome, attemptOutcome } from "../attemptOutcome";
import type { SourcedRecord } from "../sourceTexts";

/**
 * What a try that has ended came to, by what its station asks: some of the numbers are dialed without a bolt to draw.
 *
 * @param turned - what turned the dial
 */
export function stationOutcome(attempt: Attempt, station: Station, turned: SourcedRecord = {}): AttemptOutcome {
  const outcome = attemptOutcome(attempt);
  if (station.kind !== "dialing" || station.upTo === undefined) return outcome;
  const faults = faultsCounted({ ...outcome, sources: turned.sources }, station);
  return { ...outcome, faults: [...faults], opened: faults.length === 0 };
}
