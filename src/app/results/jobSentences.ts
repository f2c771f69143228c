import { capital, ordinalWord } from "../../dialing/words";
import type { Assembly } from "../../fitting/assembly";
import { NEW_BOARD } from "../../fitting/board";
import type { FitCheck } from "../../fitting/fitCheck";
import type { FitFault } from "../../fitting/fitFaultCode";
import { checksText, FAULT_WORDS as FIT_FAULT_WORDS, foundByText } from "../../fitting/fitWords";
import { isGuessed, overlooked, unfounded } from "../../fitting/inspect/inspectionResult";
import { FAULT_WORDS } from "../../handover/run/rules/faultWords";
import { REQUIRED_PROOFS } from "../../handover/run/rules/proofs";
import { TROUBLE_GUIDE } from "../../handover/trouble/troubleGuide";
import { troubleSentence } from "../../handover/trouble/troubleWords";
import {
  type ChangeDetails,
  detailsOf,
  type FittingDetails,
  type HandoverDetails,
  type InspectionDetails,
  type TroubleDetails,
} from "../../records/job/jobDetails";
import type { JobRecord } from "../../records/jobRecord";
import { countText } from "../../wording/amountWords";
import { signedText } from "../parts/signedText";
import { knownProfile } from "./attemptRows";
import { minutesText, sizeErrorText } from "./jobRows";
import { missedWord } from "./jobWords";
import { serviceStory } from "./serviceStory";

/** A job told closely: a sentence first, then what there is to tell, point by point. */
export interface JobStory {
  readonly sentence: string;
  readonly points: readonly string[];
}

const OUTCOMES: Readonly<Record<ChangeDetails["outcome"], string>> = {
  true: "The lock opens as written",
  off: "The lock opens, but not as written",
  spoiled: "The pack is spoiled: it opens to no combination",
  "key-turned": "The change key was left turned, so no combination is set",
  unchanged: "The combination was not changed",
};

const atNumber = ({ code, number, size }: ChangeDetails["faults"][number]) => {
  const place = number === 0 ? "" : `, number ${number}`;
  const isCount = code === "present-refused" || code === "door-shut-unproved";
  if (code === "locked-out") return `${missedWord(code)}.`;
  return `${missedWord(code)}${place}: ${isCount ? size : `${size.toFixed(1)} graduations`}.`;
};

function changeStory({ outcome, proofs, errors, faults }: ChangeDetails, missed: readonly string[]): JobStory {
  const told = new Set(faults.map(({ code }) => code));
  const mended = missed.filter((code) => !told.has(code));
  const set = errors?.map((error, k) => `${ordinalWord(k + 1)} ${signedText(error)}`).join(", ");
  return {
    sentence: `${OUTCOMES[outcome]}. ${countText(proofs, "proof", "proofs")} with the door open.`,
    points: [
      ...faults.map((fault) => capital(atNumber(fault))),
      ...mended.map((code) => `${capital(missedWord(code))}, earlier in this change.`),
      ...(set === undefined ? [] : [`Off the numbers meant, in graduations: ${set}.`]),
    ],
  };
}

function troubleStory(details: TroubleDetails): JobStory {
  const { truth, named, points, tries, measurements } = details;
  const size = sizeErrorText(details);
  return {
    sentence: `It was: ${troubleSentence(truth)}.`,
    points: [
      `You named: ${troubleSentence(named)}.`,
      ...(size === null ? [] : [`${capital(size)}; ${TROUBLE_GUIDE[truth.kind].tolerance} allowed.`]),
      `${points} of 2 points, ${countText(tries, "try", "tries")}, ${countText(measurements, "measurement")}.`,
      TROUBLE_GUIDE[truth.kind].tell,
    ],
  };
}

const HANDOVER_FAULTS = new Map(Object.entries(FAULT_WORDS));

function handoverFault({ code, step, at_ms, isUndone }: HandoverDetails["faults"][number]): string {
  const words = HANDOVER_FAULTS.get(code);
  const where = `Step ${step}, at ${minutesText(at_ms)}${isUndone ? ", undone in the debrief" : ""}`;
  return words === undefined
    ? `${where}: ${missedWord(code)}.`
    : `${where}: ${words.happened} Instead: ${words.instead}`;
}

type Fitted = Pick<Assembly, "board">;

/** The lock of a job, as far as its checks go by it. */
const lockOf = (job: JobRecord): Fitted => ({ board: knownProfile(job)?.kind === "dial-encoder" ? NEW_BOARD : null });

const skippedText = (skipped: readonly FitCheck[], lock: Fitted) =>
  skipped.length === 0 ? "You made every check." : `Checks you did not make on this fit: ${checksText(skipped, lock)}.`;

const fitFaultText = (fault: FitFault) => `${FIT_FAULT_WORDS[fault].what} ${FIT_FAULT_WORDS[fault].does}`;

/** How the lock of a handover was fitted at its end, point by point; nothing of one that came on its door. */
function handoverFit({ fit }: HandoverDetails, lock: Fitted): readonly string[] {
  if (fit === undefined) return [];
  if (!fit.isTogether) return ["The lock is in parts."];
  return [...fit.faults.map(fitFaultText), skippedText(fit.skipped, lock)];
}

function handoverStory(details: HandoverDetails, lock: Fitted): JobStory {
  const { isHandedOver, isHandsOff, missing, faults, steps, undoneSteps } = details;
  const lacking = REQUIRED_PROOFS.filter(({ code }) => missing.includes(code)).map((one) => one.missing);
  const end = isHandedOver ? "Handed over" : "Not handed over";
  const undone = undoneSteps === 0 ? "" : `, ${undoneSteps} of them undone`;
  return {
    sentence: `${end}, with ${countText(faults.length, "fault")}. ${countText(steps, "step")}${undone}.`,
    points: [
      ...faults.map(handoverFault),
      ...lacking,
      ...handoverFit(details, lock),
      ...(isHandsOff ? ["A simulated hand did the dialing."] : []),
    ],
  };
}

function fittingSentence({ declared, faults }: FittingDetails): string {
  if (declared === null) return "You did not say that the dial is fitted";
  if (declared === "spent") return "The parts could not become a good lock any more";
  return faults.length === 0 ? "Nothing is wrong with the fit" : `${countText(faults.length, "fault")} in the fit`;
}

function fittingStory(details: FittingDetails, lock: Fitted): JobStory {
  const { faults, skipped, moves, spindlesUsed } = details;
  const used = spindlesUsed === 0 ? "" : `, ${countText(spindlesUsed, "spindle")} used up`;
  return {
    sentence: `${fittingSentence(details)}. ${countText(moves, "act")}${used}.`,
    points: [...faults.map(fitFaultText), skippedText(skipped, lock)],
  };
}

function inspectionSentence({ faults, named }: InspectionDetails): string {
  const were =
    faults.length === 0 ? "Nothing was wrong with the fit" : `${countText(faults.length, "fault")} in the fit`;
  if (named === null) return `${were}. You gave no answer`;
  return `${were}. You ${named.length === 0 ? "said that nothing is wrong" : `named ${countText(named.length, "fault")}`}`;
}

function inspectionStory(details: InspectionDetails, lock: Fitted): JobStory {
  const { faults, skipped } = details;
  const missed = overlooked(details);
  const found = faults.filter((fault) => !missed.includes(fault));
  return {
    sentence: `${inspectionSentence(details)}.`,
    points: [
      ...found.map((fault) => `Found: ${FIT_FAULT_WORDS[fault].what}`),
      ...missed.map((fault) => `Overlooked: ${FIT_FAULT_WORDS[fault].what} Found by: ${foundByText(fault, lock)}.`),
      ...unfounded(details).map((fault) => `Named, but not wrong: ${FIT_FAULT_WORDS[fault].what}`),
      ...(isGuessed(details) ? ["A guess: you did not make the checks that show it."] : []),
      skippedText(skipped, lock),
    ],
  };
}

/** A job told closely. */
export function jobStory(job: JobRecord): JobStory {
  const found = detailsOf(job);
  switch (found?.kind) {
    case "change":
      return changeStory(found.details, job.missed);
    case "trouble":
      return troubleStory(found.details);
    case "handover":
      return handoverStory(found.details, lockOf(job));
    case "fitting":
      return fittingStory(found.details, lockOf(job));
    case "service":
      return serviceStory(found.details);
    case "inspection":
      return inspectionStory(found.details, lockOf(job));
    case undefined:
      return {
        sentence: job.isRight ? "It was right." : "It was not right.",
        points: job.missed.map((code) => `${capital(missedWord(code))}.`),
      };
  }
}
