import type { Fault } from "../../dialing/fault";
import type { FitCheck } from "../../fitting/fitCheck";
import type { FitFault } from "../../fitting/fitFaultCode";
import type { FittingAct } from "../../fitting/fittingAct";
import type { FittingResult } from "../../fitting/fittingResult";
import { type InspectionResult, inspectionMistakes } from "../../fitting/inspect/inspectionResult";
import type { Combination } from "../../lock/combination";
import type { Graduations, Milliseconds, Turn } from "../../lock/dial";
import type { DialDoubt } from "../../realdial/sources/dialDoubt";
import type { SourceDescription } from "../../realdial/sources/sourceDescription";
import type { VisitResult } from "../../service/visitResult";
import type { ConformanceVerdict } from "../../statistics/conformance";
import type { TakenReading } from "../../zeroing/readAgain";
import type { TryPlace } from "../sheet/planTries";
import type { Station } from "../sheet/sheet";
import { judgedFaults } from "./coarseStep";
import { inTime } from "./inTime";
import { isAdmitted } from "./isAdmitted";
import { isChangeRight, isFittingRight, isHandoverRight, isInspectionRight, isServiceRight } from "./jobRule";
import { isDoubtAdmitted } from "./lostSight";

interface AnyTry extends TryPlace {
  /** From the first motion to the end, milliseconds. */
  readonly time_ms: Milliseconds;
  /** Lost to a reload or a crash: made, but not right. */
  readonly isBrokenOff: boolean;
}

interface TurnedTry extends AnyTry {
  /** What turned the dial; left out where the hands on the screen alone did. */
  readonly sources?: readonly SourceDescription[] | undefined;
  /** Why its turns may be miscounted; left out where nothing speaks for that. */
  readonly doubts?: readonly DialDoubt[] | undefined;
}

interface DialTry extends TurnedTry {
  /** How often it was broken off because its turns came to be in doubt, and begun again; left out where never. */
  readonly begunAgain?: number | undefined;
}

/** What one try at dialing came to. */
export interface DialingTry extends DialTry {
  readonly kind: "dialing";
  readonly combination: Combination;
  /** Whether it opened, the first time. */
  readonly opened: boolean;
  /** Of each number in dialing order; null where there was no stop to speak of. Graduations, positive ran past. */
  readonly stopErrors: readonly (Graduations | null)[];
  readonly faults: readonly Pick<Fault, "code" | "number" | "size">[];
}

/** What one try at setting zero came to. */
export interface ZeroingTry extends DialTry {
  readonly kind: "zeroing";
  /** Of each direction; null where its series was not closed. */
  readonly verdicts: Readonly<Record<Turn, ConformanceVerdict | null>>;
  /** Means of each direction, graduations; null where its series was not closed. */
  readonly means: Readonly<Record<Turn, Graduations | null>>;
  /** Readings refused. */
  readonly refused: number;
  /** Every reading in the order it was taken; left out in records of earlier versions. */
  readonly readings?: readonly TakenReading[] | undefined;
}

/** A fault of a job, by the code that the handover layer has for it. */
export interface JobFault {
  /** Kebab case. */
  readonly code: string;
  /** Graduations or a count, as the code has it; left out where there is nothing to measure. */
  readonly size?: number | undefined;
}

/** How a change of combination can leave the lock. */
export const CHANGE_OUTCOMES = ["true", "off", "spoiled", "key-turned", "unchanged"] as const;

/** What one change of a combination came to. */
export interface ChangeTry extends TurnedTry {
  readonly kind: "change";
  /** The new combination. */
  readonly combination: Combination;
  /** It opens as written; it opens, but not as written; it opens no more; the key was left turned; it was not changed. */
  readonly outcome: (typeof CHANGE_OUTCOMES)[number];
  /** Openings with the new combination in a row, door open, up to the end of the try. */
  readonly proofs: number;
  readonly faults: readonly JobFault[];
}

/** What one hidden condition came to. */
export interface TroubleTry extends TurnedTry {
  readonly kind: "trouble";
  /** Id of what was wrong; null where the try was lost. */
  readonly condition: string | null;
  /** Id of what was named; null where nothing was. */
  readonly named: string | null;
  /** Whether kind and place are right and had been looked at: a guess is not right. */
  readonly isNamedRight: boolean;
  /**
   * Size told less true size, graduations; null where the condition was not named right, or its size is no number of
   * graduations.
   */
  readonly sizeError: Graduations | null;
  /** Times the lock was dialed through. */
  readonly tries: number;
  readonly measurements: number;
}

/** How the lock of a handover was fitted, with all that shows it. */
export interface HandoverFit {
  /** Whether the lock was together at the end. */
  readonly isTogether: boolean;
  /** What was wrong with it. */
  readonly faults: readonly FitFault[];
  /** Checks that were not made since a part was last moved. */
  readonly skipped: readonly FitCheck[];
  /** How often new parts took the place of spoiled ones. */
  readonly partsReplaced: number;
  /** All that was done to the parts since they came new. */
  readonly acts: readonly FittingAct[];
  /** Made since a part was last moved. */
  readonly checks: readonly FitCheck[];
}

/** What one handover came to. */
export interface HandoverTry extends TurnedTry {
  readonly kind: "handover";
  /** Whether it was signed off. */
  readonly isHandedOver: boolean;
  /** Codes of what was wanting at the end. */
  readonly missing: readonly string[];
  readonly faults: readonly JobFault[];
  /** Steps that were taken back. */
  readonly undone: number;
  /** Left out where the lock came on its door. */
  readonly fit?: HandoverFit | undefined;
}

/** What one fitting came to. */
export interface FittingTry extends AnyTry, Omit<FittingResult, "faults"> {
  readonly kind: "fitting";
  readonly faults: readonly { readonly code: FitFault }[];
}

/** What one service visit came to. */
export interface ServiceTry extends AnyTry, VisitResult {
  readonly kind: "service";
}

/** What judging one fit came to. */
export interface InspectionTry extends AnyTry, InspectionResult {
  readonly kind: "inspection";
}

/** What one try of a sheet came to. */
export type TryResult =
  | DialingTry
  | ZeroingTry
  | ChangeTry
  | TroubleTry
  | HandoverTry
  | FittingTry
  | ServiceTry
  | InspectionTry;

/**
 * Faults at the numbers that the station has dialed. Where a coarse source turns the dial, count and order alone are marked.
 */
export function faultsCounted(one: Pick<DialingTry, "faults" | "sources">, station: Station): DialingTry["faults"] {
  const upTo = station.kind === "dialing" ? station.upTo : undefined;
  // A dial that stops after some of the numbers is never drawn, and that is as it should be.
  return judgedFaults(one.faults, one.sources).filter(
    ({ code, number }) => upTo === undefined || (number <= upTo && code !== "not-drawn"),
  );
}

/** Whether a try had any fault; a reading that was refused is none. */
export function hasFault(one: TryResult, station: Station): boolean {
  if (one.kind === "dialing") return faultsCounted(one, station).length > 0;
  // What was wrong with a lock that somebody else fitted is no fault of the try.
  if (one.kind === "inspection") return inspectionMistakes(one) > 0;
  return "faults" in one && one.faults.length > 0;
}

function isWellDone(one: TryResult, station: Station): boolean {
  switch (one.kind) {
    case "dialing":
      return station.kind === "dialing" && station.upTo !== undefined ? !hasFault(one, station) : one.opened;
    case "zeroing":
      return zeroShown(one, station) === "accept";
    case "change":
      return isChangeRight(one);
    case "trouble":
      return one.isNamedRight;
    case "handover":
      return isHandoverRight(one);
    case "fitting":
      return isFittingRight(one);
    case "service":
      return isServiceRight(one);
    case "inspection":
      return isInspectionRight(one);
  }
}

const isDialTry = (one: TryResult): one is DialingTry | ZeroingTry => one.kind === "dialing" || one.kind === "zeroing";

/** Whether a try counts: the page did not lose it, it was in time, and what turned the dial, and how surely, is admitted. */
const counts = (one: TryResult, station: Station): boolean =>
  !one.isBrokenOff &&
  inTime(one, station) &&
  (!isDialTry(one) || (isAdmitted(one, station) && isDoubtAdmitted(one, station)));

/**
 * Whether a try was right, within the time limit, and turned by what its station admits.
 *
 * Dialing: it opened the first time, or its numbers were dialed without fault where the station asks for some of them
 * only. Zeroing: both directions are shown to be good. A job: by its rule in `jobRule`.
 */
export function isRight(one: TryResult, station: Station): boolean {
  return counts(one, station) && isWellDone(one, station);
}

/** What a try at setting zero shows, both directions together and within the time limit. */
export function zeroShown(one: ZeroingTry, station: Station): ConformanceVerdict {
  const { left, right } = one.verdicts;
  if (!counts(one, station)) return "reject";
  if (left === "reject" || right === "reject") return "reject";
  return left === "accept" && right === "accept" ? "accept" : "not shown yet";
}
