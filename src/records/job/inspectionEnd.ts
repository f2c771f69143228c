import { inspectionMissed } from "../../drill/marking/jobMissed";
import type { InspectionResult } from "../../fitting/inspect/inspectionResult";
import type { JobEnd } from "./jobNote";

/** What judging a fit has come to. */
export function inspectionEnd({ faults, named, skipped, checkSet }: InspectionResult): JobEnd {
  const facts = { faults: [...faults], named: named === null ? null : [...named], skipped: [...skipped] };
  const details = checkSet === undefined ? facts : { ...facts, checkSet };
  return { kind: "inspection", missed: inspectionMissed(details), details };
}
