import { changeMissed } from "../../drill/marking/jobMissed";
import type { Change } from "../../handover/change/change";
import { settingErrors } from "../../handover/change/changeFault";
import { leftBy } from "../../handover/change/changeOutcome";
import { tellChange } from "../../handover/change/tellChange";
import type { JobEnd } from "./jobNote";

/** What a change has come to. */
export function changeEnd(change: Change): JobEnd {
  const { profile, wanted, setCombination, proofs } = change;
  const outcome = leftBy(change);
  const faults = tellChange(change).map(({ code, number, size }) => ({ code, number, size }));
  const errors =
    outcome === "unchanged" || setCombination === null
      ? null
      : settingErrors({ profile, wanted, setTo: setCombination });
  return {
    kind: "change",
    missed: changeMissed({ outcome, proofs, faults }),
    details: { outcome, proofs, errors, faults },
  };
}
