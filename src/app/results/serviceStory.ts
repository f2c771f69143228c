import type { ServiceDetails } from "../../records/job/jobDetails";
import { faultWords, WRONG_WORDS } from "../../service/visitFaultWords";
import { countText } from "../../wording/amountWords";
import type { JobStory } from "./jobSentences";

/** A service visit told closely: what was wrong with the lock, and what the visit left out or did wrong. */
export function serviceStory({ isLeft, conditions, found, faults, acts }: ServiceDetails): JobStory {
  const end = isLeft ? "" : " You did not end the visit.";
  const went =
    faults.length === 0 ? "Nothing is wrong with the visit" : `${countText(faults.length, "fault")} in the visit`;
  return {
    sentence: `${went}. ${countText(acts, "act")}.${end}`,
    points: [
      ...(conditions.length === 0 ? ["Nothing was wrong with this lock."] : []),
      ...conditions.map(
        (one) => `${WRONG_WORDS[one].what} ${found.includes(one) ? "You found it." : "You missed it."}`,
      ),
      ...faults.map((fault) => {
        const { what, does } = faultWords(fault);
        return `${what} ${does}`;
      }),
    ],
  };
}
