import type { StepView } from "./stepViews";
import "./hand.css";

/** A mark for each arrival: made, still wanted, or one too many. */
export function Pips({ step }: { readonly step: Pick<StepView, "pips" | "counted"> }) {
  return (
    <div className="pips">
      {step.pips.map((pip, k) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an arrival is known by its place alone
        <span key={k} className={`pip pip-${pip}`} aria-hidden="true" />
      ))}
      <span className="visually-hidden">{step.counted}</span>
    </div>
  );
}
