import { small } from "../../dialing/words";
import { inTime } from "../../drill/marking/inTime";
import { fittingMissed, inspectionMissed } from "../../drill/marking/jobMissed";
import type {
  ChangeTry,
  FittingTry,
  HandoverTry,
  InspectionTry,
  ServiceTry,
  TroubleTry,
} from "../../drill/marking/tryResult";
import type { Station } from "../../drill/sheet/sheet";
import { TROUBLE_KINDS } from "../../handover/trouble/trouble";
import { TROUBLE_GUIDE } from "../../handover/trouble/troubleGuide";
import { countText } from "../../wording/amountWords";
import { signedText } from "../parts/signedText";
import { missedWord } from "../results/jobWords";

/** What a try at a job came to. */
export type JobResult = ChangeTry | TroubleTry | HandoverTry | FittingTry | ServiceTry | InspectionTry;

/** What one job of a sitting came to, in words for a row. */
export interface JobTryWords {
  readonly outcome: string;
  /** What was counted and measured. */
  readonly stops: string;
  readonly faults: string;
}

const listWords = (codes: readonly string[]) => codes.map(missedWord).join("; ") || "none";

/** What is said of a kind of defect; nothing of one that is not known here. */
const guideOf = (kind: string | null) => {
  const known = TROUBLE_KINDS.find((one) => one === kind);
  return known === undefined ? undefined : TROUBLE_GUIDE[known];
};

const CHANGE_WORDS: Readonly<Record<ChangeTry["outcome"], string>> = {
  true: "opens as written",
  off: "opens, but not as written",
  spoiled: "no longer opens",
  "key-turned": "change key left turned",
  unchanged: "not changed",
};

function changeWords({ outcome, proofs, faults }: ChangeTry): JobTryWords {
  return {
    outcome: CHANGE_WORDS[outcome],
    stops: countText(proofs, "proof", "proofs"),
    faults: listWords(faults.map(({ code }) => code)),
  };
}

function troubleWords({ condition, named, isNamedRight, sizeError, tries, measurements }: TroubleTry): JobTryWords {
  const guide = guideOf(condition);
  const truth = small(guide?.title ?? condition ?? "unknown");
  const guess = named === condition ? "guessed, or wrong place" : "not found";
  return {
    outcome: isNamedRight ? `named right: ${truth}` : `${guess}: ${truth}`,
    stops: sizeError === null ? "–" : `size off by ${signedText(sizeError)} ${guide?.unit ?? ""}`.trim(),
    faults: `${countText(tries, "try", "tries")}, ${countText(measurements, "measurement", "measurements")}`,
  };
}

function handoverWords({ isHandedOver, missing, faults, undone, fit }: HandoverTry): JobTryWords {
  const signed = isHandedOver ? "handed over" : "not handed over";
  return {
    outcome: missing.length === 0 ? signed : `${signed}; still missing: ${listWords(missing)}`,
    stops: `${countText(undone, "step", "steps")} undone`,
    faults: listWords([...faults.map(({ code }) => code), ...(fit?.faults ?? [])]),
  };
}

function fittingWords({ declared, faults, skipped, moves, spindlesUsed }: FittingTry): JobTryWords {
  const isFitted = declared !== null && declared !== "spent";
  const missing = fittingMissed({ declared, faults: [] });
  const used = spindlesUsed === 0 ? "" : `, ${countText(spindlesUsed, "spindle")} used up`;
  return {
    outcome: isFitted ? "fitted" : listWords(missing),
    stops: `${countText(moves, "act")}${used}, ${countText(skipped.length, "check")} skipped`,
    faults: listWords(faults.map(({ code }) => code)),
  };
}

function serviceWords({ isLeft, conditions, found, faults, acts }: ServiceTry): JobTryWords {
  const right = conditions.filter((one) => found.includes(one)).length;
  return {
    outcome: isLeft ? "visit ended" : missedWord("not-left"),
    stops: `${countText(acts, "act")}, ${conditions.length === 0 ? "no defect to find" : `${right} of ${countText(conditions.length, "defect")} found`}`,
    faults: listWords([...new Set(faults.map(({ code }) => code))]),
  };
}

function inspectionWords(one: InspectionTry): JobTryWords {
  const { faults, named, skipped } = one;
  const were = faults.length === 0 ? "no fault to find" : `${countText(faults.length, "fault")} to find`;
  const answer = named?.length === 0 ? "none named" : `${named?.length ?? "none"} named`;
  return {
    outcome: named === null ? "no answer" : `${were}, ${answer}`,
    stops: `${countText(skipped.length, "check")} skipped`,
    faults: listWords(named === null ? [] : inspectionMissed(one)),
  };
}

function wordsOf(one: JobResult): JobTryWords {
  switch (one.kind) {
    case "change":
      return changeWords(one);
    case "trouble":
      return troubleWords(one);
    case "handover":
      return handoverWords(one);
    case "fitting":
      return fittingWords(one);
    case "service":
      return serviceWords(one);
    case "inspection":
      return inspectionWords(one);
  }
}

/** A job in words; one that was over its time says so. */
export function jobMeasured(one: JobResult, station: Station): JobTryWords {
  const words = wordsOf(one);
  return inTime(one, station) ? words : { ...words, outcome: `${words.outcome}, too late` };
}
