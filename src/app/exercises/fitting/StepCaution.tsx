import { CautionLine } from "../handover/parts/CautionLine";
import { type CautionId, stepCaution } from "./fittingCautions";

/** What to mind at the step in hand, beside its acts; nothing where there is nothing. */
export function StepCaution({ id }: { readonly id: CautionId | null }) {
  return id === null ? null : <CautionLine>{stepCaution(id)}</CautionLine>;
}
