import { type InspectionResult, inspectionMistakes, isGuessed } from "../../fitting/inspect/inspectionResult";

/**
 * When a job counts as right: one rule for each kind, for the marks of a sitting and for the logbook alike.
 *
 * Faults that were mended and the size of a condition have marks of their own, and are told beside the answer.
 */

/** Openings in a row that prove a new combination. Source: MIL-HDBK-1013/8 (1989), section 2, item d. */
export const PROOFS_WANTED = 3;

/** How a lock stands after a change. */
export interface ChangeStanding {
  /** "true" where it opens as written. */
  readonly outcome: string;
  /** Openings with the new combination in a row, door open, up to the end. */
  readonly proofs: number;
}

/** Whether a change is right. */
export const isChangeRight = ({ outcome, proofs }: ChangeStanding): boolean =>
  outcome === "true" && proofs >= PROOFS_WANTED;

/** How a door was handed over. */
export interface HandoverStanding {
  readonly isHandedOver: boolean;
  readonly missing: readonly unknown[];
  /** Those undone in the debrief too: they were made. */
  readonly faults: readonly unknown[];
}

/** Whether a handover is right. */
export const isHandoverRight = ({ isHandedOver, missing, faults }: HandoverStanding): boolean =>
  isHandedOver && missing.length === 0 && faults.length === 0;

/** How a hidden condition was named. */
export interface DiagnosisStanding {
  /** Whether kind and, where there is one, place are those of the condition. */
  readonly isKindRight: boolean;
  /** Whether what shows it had not been looked at. */
  readonly isGuess: boolean;
}

/** Whether a diagnosis is right. */
export const isDiagnosisRight = ({ isKindRight, isGuess }: DiagnosisStanding): boolean => isKindRight && !isGuess;

/** How a lock was fitted. */
export interface FittingStanding {
  /** How far it was together when it was said to be ready; null where it never was. */
  readonly declared: string | null;
  /** What was wrong with the fit. */
  readonly faults: readonly unknown[];
}

/** Whether a fitting is right. */
export const isFittingRight = ({ declared, faults }: FittingStanding): boolean =>
  declared !== null && declared !== "spent" && faults.length === 0;

/** How a service visit went. */
export interface ServiceStanding {
  /** Whether the technician said that it is over. */
  readonly isLeft: boolean;
  readonly faults: readonly unknown[];
}

/** Whether a service visit is right. */
export const isServiceRight = ({ isLeft, faults }: ServiceStanding): boolean => isLeft && faults.length === 0;

/** Whether a fit was judged right: all that is wrong with it is named, nothing else is, and none of it is a guess. */
export const isInspectionRight = (result: InspectionResult): boolean =>
  result.named !== null && inspectionMistakes(result) === 0 && !isGuessed(result);

/** The rules in words, a sentence each. */
export const JOB_RULES = {
  change: `A change is right when the lock opens as written and that was proved ${PROOFS_WANTED} times in a row.`,
  trouble:
    "A diagnosis is right when you measured the defect and named it and its place right. Its size is shown beside that.",
  handover: "A handover is right when it is signed off with nothing missing and no fault.",
  fitting: "A fitting is right when you say that the dial is fitted and nothing is wrong with the fit.",
  service: "A service visit is right when you leave the site with nothing left out and no fault.",
  inspection:
    "A fit is judged right when you name all that is wrong with it and nothing else. A fault counts when you made a check that shows it. “Nothing is wrong” counts when you made every check.",
} as const;
