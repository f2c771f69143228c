import type { Help } from "../../dialing/advice";
import type { HandledLock } from "../../dialing/attempt";
import type { DialingState } from "../../dialing/dialingMachine";
import { faceText, ordinalWord } from "../../dialing/words";
import { type StepView, stepViews } from "./stepViews";
import "./hand.css";

/** A mark for each arrival: made, still wanted, or one too many. */
function Pips({ step }: { readonly step: Pick<StepView, "pips" | "counted"> }) {
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

interface StepStripProps {
  readonly attempt: HandledLock;
  readonly state: DialingState;
  readonly help: Help;
  /** What follows the last number, where that is not the draw: what to do, and what has come of it. */
  readonly end?: { readonly say: string; readonly came: string; readonly isCurrent: boolean } | undefined;
}

/** The procedure on one plate: every number with its direction and arrivals, then the draw. */
export function StepStrip({ attempt, state, help, end }: StepStripProps) {
  const { profile, combination } = attempt;
  const steps = stepViews(attempt, state);
  const isSilent = help === "silent";
  return (
    <ol className="strip" aria-label="Combination and turns">
      {steps.numbers.map((step, k) => (
        <li key={step.key} className="strip-step" aria-current={!isSilent && step.isCurrent ? "step" : undefined}>
          <small>{ordinalWord(k + 1)} number</small>
          <div>
            {step.turn} to <b>{faceText(combination[k] ?? 0, profile)}</b>
            {help === "full" && step.stop !== null && (
              <span className="ml-3 text-fine text-soft">
                {" "}
                <span className="visually-hidden">stop error </span>
                {step.stop}
              </span>
            )}
          </div>
          {isSilent ? (
            <div className="strip-pips text-fine min-h-[1.35em] whitespace-nowrap overflow-hidden text-ellipsis in-words">
              {step.asked}
            </div>
          ) : (
            <Pips step={step} />
          )}
        </li>
      ))}
      <li className="strip-step" aria-current={!isSilent && (end ?? steps.draw).isCurrent ? "step" : undefined}>
        <small>then</small>
        <div>{end?.say ?? `${profile.draw.turn} to the stop`}</div>
        <div className="strip-pips text-fine min-h-[1.35em] whitespace-nowrap overflow-hidden text-ellipsis">
          {end?.came ?? (isSilent ? steps.draw.end : steps.draw.bolt)}
        </div>
      </li>
    </ol>
  );
}
