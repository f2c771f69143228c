import { type CautionId, stepCaution } from "./fittingCautions";

/** What to mind at the step in hand, beside its acts; nothing where there is nothing. */
export function StepCaution({ id }: { readonly id: CautionId | null }) {
  if (id === null) return null;
  return (
    <p className="barred pl-4 text-small leading-[1.35]">
      <strong>Caution.</strong> {stepCaution(id)}
    </p>
  );
}
