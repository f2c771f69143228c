import { countText } from "../../wording/amountWords";
import { type Evidence, type Judged, lostText, openText, staysWithin } from "./evidence";
import type { FittingTry, ServiceTry } from "./tryResult";

interface Counted {
  /** Every try of the kind, lost ones too. */
  readonly tries: readonly (FittingTry | ServiceTry)[];
  /** Those that were made and never came to their end. */
  readonly unready: number;
  readonly noun: string;
  readonly unreadyWord: string;
}

/** Judges the faults over all tries; one that never came to its end fails, for it may have any number of them. */
function judgeFaults({ tries, unready, noun, unreadyWord }: Counted, { criterion, open }: Evidence): Judged {
  const kept = tries.filter(({ isBrokenOff }) => !isBrokenOff);
  const lost = tries.length - kept.length;
  const count = kept.reduce((sum, { faults }) => sum + faults.length, 0);
  const unreadyText = unready > 0 ? `, ${unready} ${unreadyWord}` : "";
  return {
    // One try still open, or lost, may have any number of faults.
    verdict: unready > 0 ? "fail" : staysWithin(count, open + lost > 0 ? Infinity : 0, criterion.limit),
    value: count,
    says: `${countText(count, "fault")} in ${countText(kept.length, noun)}${unreadyText}${lostText(lost)}${openText(open)}; at most ${criterion.limit} allowed`,
    sureness: "",
  };
}

/** Judges the faults over all fits. */
export function judgeFits(evidence: Evidence): Judged {
  const tries = evidence.made.filter((one) => one.kind === "fitting");
  const isUnready = ({ isBrokenOff, declared }: FittingTry) =>
    !isBrokenOff && (declared === null || declared === "spent");
  const unready = tries.filter(isUnready).length;
  return judgeFaults({ tries, unready, noun: "fit", unreadyWord: "never fitted" }, evidence);
}

/** Judges the faults over all service visits. */
export function judgeVisits(evidence: Evidence): Judged {
  const tries = evidence.made.filter((one) => one.kind === "service");
  const unready = tries.filter(({ isBrokenOff, isLeft }) => !isBrokenOff && !isLeft).length;
  return judgeFaults({ tries, unready, noun: "visit", unreadyWord: "never ended" }, evidence);
}
