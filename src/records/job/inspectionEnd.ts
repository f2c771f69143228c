import { inspectionMissed } from "../../drill/marking/jobMissed";
import type { InspectionResult } from "../../fitting/inspect/inspectionResult";
import type { JobEnd } from "./jobNote";

/** What judging a fit has come to. */
export function inspectionEnd({ faults, named, skipped }: InspectionResult): JobEnd {
  const details = { faults: [...faults], named: named === null ? null : [...named], skipped: [...skipped] };
  return { kind: "inspection", missed: inspectionMissed({ faults, named, skipped }), details };
}
