import { countText } from "../../wording/amountWords";
import { type Evidence, type Judged, lostText, openText, staysWithin } from "./evidence";

/** Judges the faults over all fits; one that was never said to be ready fails, for it may have any number of them. */
export function judgeFits({ criterion, made, open }: Evidence): Judged {
  const fits = made.filter((one) => one.kind === "fitting");
  const kept = fits.filter(({ isBrokenOff }) => !isBrokenOff);
  const lost = fits.length - kept.length;
  const unready = kept.filter(({ declared }) => declared === null || declared === "spent").length;
  const count = kept.reduce((sum, { faults }) => sum + faults.length, 0);
  const unreadyText = unready > 0 ? `, ${unready} never fitted` : "";
  return {
    // One try still open, or lost, may have any number of faults.
    verdict: unready > 0 ? "fail" : staysWithin(count, open + lost > 0 ? Infinity : 0, criterion.limit),
    value: count,
    says: `${countText(count, "fault")} in ${countText(kept.length, "fit")}${unreadyText}${lostText(lost)}${openText(open)}; at most ${criterion.limit} allowed`,
    sureness: "",
  };
}
