import { inspectionMistakes } from "../../fitting/inspect/inspectionResult";
import { countText } from "../../wording/amountWords";
import { type Evidence, type Judged, lostText, openText, staysWithin } from "./evidence";
import type { FittingTry, InspectionTry, ServiceTry } from "./tryResult";

/** What is counted over all tries of a kind, and what of a try that never came to its end is said. */
interface Counted<Try> {
  /** Every try of the kind, lost ones too. */
  readonly tries: readonly Try[];
  readonly countOf: (one: Try) => number;
  readonly isUnready: (one: Try) => boolean;
  /** What is counted, in what, and what one is that never came to its end. */
  readonly words: readonly [counted: string, noun: string, unready: string];
}

/** Judges a count over all tries; one that never came to its end fails, for it may come to any number. */
function judgeCount<Try extends FittingTry | ServiceTry | InspectionTry>(
  { tries, countOf, isUnready, words }: Counted<Try>,
  { criterion, open }: Evidence,
): Judged {
  const [counted, noun, unreadyWord] = words;
  const kept = tries.filter(({ isBrokenOff }) => !isBrokenOff);
  const lost = tries.length - kept.length;
  const unready = kept.filter(isUnready).length;
  const count = kept.reduce((sum, one) => sum + countOf(one), 0);
  const unreadyText = unready > 0 ? `, ${unready} ${unreadyWord}` : "";
  return {
    // One try still open, or lost, may come to any number.
    verdict: unready > 0 ? "fail" : staysWithin(count, open + lost > 0 ? Infinity : 0, criterion.limit),
    value: count,
    says: `${countText(count, counted)} in ${countText(kept.length, noun)}${unreadyText}${lostText(lost)}${openText(open)}; at most ${criterion.limit} allowed`,
    sureness: "",
  };
}

const faultsOf = ({ faults }: FittingTry | ServiceTry) => faults.length;

/** Judges the faults over all fits. */
export function judgeFits(evidence: Evidence): Judged {
  const tries = evidence.made.filter((one) => one.kind === "fitting");
  const isUnready = ({ declared }: FittingTry) => declared === null || declared === "spent";
  return judgeCount({ tries, countOf: faultsOf, isUnready, words: ["fault", "fit", "never fitted"] }, evidence);
}

/** Judges the faults over all service visits. */
export function judgeVisits(evidence: Evidence): Judged {
  const tries = evidence.made.filter((one) => one.kind === "service");
  const isUnready = ({ isLeft }: ServiceTry) => !isLeft;
  return judgeCount({ tries, countOf: faultsOf, isUnready, words: ["fault", "visit", "never ended"] }, evidence);
}

/** Judges the faults that were overlooked, wrongly named or guessed over all fits that somebody else made. */
export function judgeInspections(evidence: Evidence): Judged {
  const tries = evidence.made.filter((one) => one.kind === "inspection");
  const isUnready = ({ named }: InspectionTry) => named === null;
  const words = ["mistake", "fit", "without an answer"] as const;
  return judgeCount({ tries, countOf: inspectionMistakes, isUnready, words }, evidence);
}
