import type { FittingResult } from "../../fitting/fittingResult";
import { type InspectionResult, isGuessed, overlooked, unfounded } from "../../fitting/inspect/inspectionResult";
import type { VisitResult } from "../../service/visitResult";
import { PROOFS_WANTED } from "./jobRule";
import type { ChangeTry, HandoverFit, HandoverTry } from "./tryResult";

/** Codes of what was missing or wrong in a job, for its record: one list for a sitting and for free practice. */

/** What a change missed: its faults, and what it lacks beside them. */
export function changeMissed({ outcome, proofs, faults }: Pick<ChangeTry, "outcome" | "proofs" | "faults">): string[] {
  const codes = faults.map(({ code }) => code);
  if (outcome === "unchanged") return [...codes, "not-changed"];
  if (outcome === "key-turned") return [...codes, "key-left-turned"];
  const isUnproved = outcome === "true" && proofs < PROOFS_WANTED && !codes.includes("door-shut-unproved");
  return isUnproved ? [...codes, "not-proved"] : codes;
}

/** What is looked at of a handover, as a sitting and as free practice have it. */
interface Handed extends Pick<HandoverTry, "isHandedOver" | "missing" | "faults"> {
  readonly fit?: Pick<HandoverFit, "faults"> | undefined;
}

/**
 * What a handover missed, with what is wrong with its lock's fit. Faults that were undone in the debrief count: they were
 * made.
 */
export function handoverMissed(result: Handed): string[] {
  const codes = [...result.missing, ...result.faults.map(({ code }) => code), ...(result.fit?.faults ?? [])];
  return result.isHandedOver || codes.length > 0 ? codes : ["not-signed"];
}

/** What a fitting missed: what is wrong with the fit, or that there is none. */
export function fittingMissed({ declared, faults }: Pick<FittingResult, "declared" | "faults">): string[] {
  if (declared === null) return [...faults, "not-declared"];
  return declared === "spent" ? [...faults, "parts-spent"] : [...faults];
}

/** What a service visit missed: its faults, each kind once, or that it was never over. */
export function serviceMissed({ isLeft, faults }: Pick<VisitResult, "isLeft" | "faults">): string[] {
  const codes = [...new Set<string>(faults.map(({ code }) => code))];
  return isLeft ? codes : [...codes, "not-left"];
}

/** What judging a fit missed: faults overlooked, faults that were not there, a guess, or that there was no answer. */
export function inspectionMissed(result: InspectionResult): string[] {
  if (result.named === null) return ["no-answer"];
  return [
    ...overlooked(result).map((fault) => `overlooked-${fault}`),
    ...unfounded(result).map((fault) => `unfounded-${fault}`),
    ...(isGuessed(result) ? ["not-checked"] : []),
  ];
}
