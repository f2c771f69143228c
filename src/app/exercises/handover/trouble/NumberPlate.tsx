import { faceText, ordinalWord } from "../../../../dialing/words";
import type { LockCard } from "../../../../handover/trouble/trouble";
import type { StepView } from "../../../hand/stepViews";

const PIP = { made: "●", wanted: "○", extra: "×" } as const;

interface NumberPlateProps {
  readonly card: LockCard;
  /** Arrivals and stops so far; null where nothing is counted for the trainee. */
  readonly steps: readonly StepView[] | null;
  /** How the try ended, in words; "" while it has not. */
  readonly end: string;
}

/** The combination as written: every number with its direction and arrivals, then the draw. */
export function NumberPlate({ card, steps, end }: NumberPlateProps) {
  const { profile, combination } = card;
  return (
    <ol className="strip" aria-label="Combination and turns">
      {profile.procedure.map((step, k) => {
        const made = steps?.[k];
        const asked = `${step.rule === "at-least" ? "at least " : ""}${step.arrivals} arrivals`;
        return (
          <li
            key={`${ordinalWord(k + 1)}`}
            className="strip-step"
            aria-current={made?.isCurrent === true ? "step" : undefined}
          >
            <small>{ordinalWord(k + 1)} number</small>
            <div>
              {step.turn} to <b>{faceText(combination[k] ?? 0, profile)}</b>
              {made?.stop != null && <span className="strip-stop">{made.stop}</span>}
            </div>
            {made === undefined ? (
              <div className="strip-pips">{asked}</div>
            ) : (
              <div className="strip-pips">
                <span aria-hidden="true">{made.pips.map((pip) => PIP[pip]).join(" ")}</span>
                <span className="visually-hidden">{made.counted}</span>
              </div>
            )}
          </li>
        );
      })}
      <li className="strip-step">
        <small>then</small>
        <div>{profile.draw.turn} to the stop</div>
        <div className="strip-pips">{end === "" ? "–" : end}</div>
      </li>
    </ol>
  );
}
