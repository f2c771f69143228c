import { fittingMissed } from "../../drill/marking/jobMissed";
import type { FittingResult } from "../../fitting/fittingResult";
import type { JobEnd } from "./jobNote";

/** What a fitting has come to. */
export function fittingEnd(result: FittingResult): JobEnd {
  const details = { ...result, faults: [...result.faults], skipped: [...result.skipped] };
  return { kind: "fitting", missed: fittingMissed(result), details };
}
