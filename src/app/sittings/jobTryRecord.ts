import {
  type ChangeTry,
  type HandoverTry,
  isRight,
  PROOFS_WANTED,
  type TroubleTry,
} from "../../drill/marking/tryResult";
import type { JobRecord } from "../../logbook/jobRecord";

/** What a try at a job came to. */
export type JobResult = ChangeTry | TroubleTry | HandoverTry;

const codesOf = (faults: ChangeTry["faults"]) => faults.map(({ code }) => code);

function changeMissed({ outcome, proofs, faults }: ChangeTry): string[] {
  const codes = codesOf(faults);
  if (outcome === "unchanged") return [...codes, "unchanged"];
  const isUnproved = proofs < PROOFS_WANTED && !codes.includes("door-shut-unproved");
  return isUnproved ? [...codes, "unproved"] : codes;
}

/** Codes of what was missing or wrong, each once. */
function missedIn(result: JobResult): string[] {
  switch (result.kind) {
    case "change":
      return changeMissed(result);
    case "trouble":
      return result.isNamedRight ? [] : ["not-named"];
    case "handover":
      return [...result.missing, ...codesOf(result.faults)];
  }
}

/** Fields that tell a combination, or that the record has elsewhere. */
const LEFT_OUT = ["kind", "station", "repetition", "time_ms", "isBrokenOff", "combination"];

/** What of the result goes into the record: its numbers, never a combination. */
function detailsOf(result: JobResult): JobRecord["details"] {
  const kept = Object.entries(result).filter(([key]) => !LEFT_OUT.includes(key));
  return JSON.parse(JSON.stringify(Object.fromEntries(kept)));
}

/** What came of a try at a job, in the fields of its record. @param station - asks for it, and may limit its time */
export function jobOutcome(
  result: JobResult,
  station: Parameters<typeof isRight>[1],
): Pick<JobRecord, "kind" | "duration_ms" | "isRight" | "missed" | "details"> {
  return {
    kind: result.kind,
    duration_ms: Math.round(result.time_ms),
    isRight: isRight(result, station),
    missed: [...new Set(missedIn(result))],
    details: detailsOf(result),
  };
}
