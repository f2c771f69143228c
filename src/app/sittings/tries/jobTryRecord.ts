import { inTime } from "../../../drill/marking/inTime";
import { changeMissed, handoverMissed } from "../../../drill/marking/jobMissed";
import type { ChangeTry, FittingTry, InspectionTry, ServiceTry } from "../../../drill/marking/tryResult";
import type { Station } from "../../../drill/sheet/sheet";
import type { FittingResult } from "../../../fitting/fittingResult";
import { fittingEnd } from "../../../records/job/fittingEnd";
import { inspectionEnd } from "../../../records/job/inspectionEnd";
import type { ChangeDetails } from "../../../records/job/jobDetails";
import type { JobEnd } from "../../../records/job/jobNote";
import { serviceEnd } from "../../../records/job/serviceEnd";
import { TOO_LATE } from "../../../records/jobRight";
import type { VisitResult } from "../../../service/visitResult";
import type { JobResult } from "../../verdicts/jobTryWords";

const fittingOf = ({ declared, faults, skipped, moves, spindlesUsed }: FittingTry): FittingResult => ({
  ...{ declared, skipped, moves, spindlesUsed },
  faults: faults.map(({ code }) => code),
});

const visitOf = ({ isLeft, conditions, found, faults, acts }: ServiceTry): VisitResult => ({
  ...{ isLeft, conditions, found, faults, acts },
});

function missedIn(result: Exclude<JobResult, FittingTry | ServiceTry | InspectionTry>): string[] {
  switch (result.kind) {
    case "change":
      return changeMissed(result);
    case "trouble":
      return result.isNamedRight ? [] : ["not-named"];
    case "handover":
      return handoverMissed(result);
  }
}

/** How a change ended; where each fault was, and how far each number was off, went with its page. */
const changeDetails = ({ outcome, proofs, faults }: ChangeTry): ChangeDetails => ({
  outcome,
  proofs,
  errors: null,
  faults: faults.flatMap(({ code, size }) => (size === undefined ? [] : [{ code, number: 0, size }])),
});

/** How a job ended, as far as the sitting's own result tells it: without most details, which went with its page. */
export function keptEnd(result: JobResult): JobEnd {
  if (result.kind === "fitting") return fittingEnd(fittingOf(result));
  if (result.kind === "service") return serviceEnd(visitOf(result), null);
  if (result.kind === "inspection") return inspectionEnd(result);
  const missed = missedIn(result);
  return result.kind === "change"
    ? { kind: result.kind, missed, details: changeDetails(result) }
    : { kind: result.kind, missed };
}

/** A job of a station: one that took longer than the station allows has missed that. */
export function withinTime(end: JobEnd, result: JobResult, station: Station): JobEnd {
  return inTime(result, station) ? end : { ...end, missed: [...end.missed, TOO_LATE] };
}
