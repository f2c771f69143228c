import { PROOFS_WANTED } from "../../drill/marking/jobRule";
import { settingErrors } from "../../handover/change/changeFault";
import { opensTo } from "../../handover/change/opensTo";
import { PackChange } from "../../handover/change/packChange";
import { type Change, tellChange } from "../../handover/change/tellChange";
import type { ChangeDetails } from "./jobDetails";
import type { JobEnd } from "./jobNote";

/** Whether the lock opens as written now, opens otherwise, opens no more, or was not changed. */
export function outcomeOf(change: Change): ChangeDetails["outcome"] {
  const { profile, setCombination, wanted, proof } = change;
  if (change instanceof PackChange && change.isSpoiled) return "spoiled";
  if (proof === null) return "unchanged";
  return opensTo(profile, setCombination, wanted) ? "true" : "off";
}

function extraMissed(outcome: ChangeDetails["outcome"], proofs: number, codes: readonly string[]): string[] {
  if (outcome === "unchanged") return ["not-changed"];
  const isUnproved = outcome === "true" && proofs < PROOFS_WANTED && !codes.includes("door-shut-unproved");
  return isUnproved ? ["not-proved"] : [];
}

/** What a change has come to. */
export function changeEnd(change: Change): JobEnd {
  const { profile, wanted, setCombination, proofs, proof } = change;
  const outcome = outcomeOf(change);
  const faults = tellChange(change).map(({ code, number, size }) => ({ code, number, size }));
  const codes = faults.map(({ code }) => code);
  const errors =
    proof === null || setCombination === null ? null : settingErrors({ profile, wanted, setTo: setCombination });
  return {
    kind: "change",
    missed: [...codes, ...extraMissed(outcome, proofs, codes)],
    details: { outcome, proofs, errors, faults },
  };
}
