import { serviceMissed } from "../../drill/marking/jobMissed";
import type { VisitResult } from "../../service/visitResult";
import type { JobEnd } from "./jobNote";

/** What a service visit has come to. @param seed - of the visit; null where it went with its page */
export function serviceEnd(result: VisitResult, seed: number | null): JobEnd {
  const { conditions, found, faults } = result;
  const details = { ...result, conditions: [...conditions], found: [...found], faults: [...faults], seed };
  return { kind: "service", missed: serviceMissed(result), details };
}
