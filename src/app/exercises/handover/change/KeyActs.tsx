import { Fragment, type MouseEvent, useId } from "react";
import type { Change } from "../../../../handover/change/change";
import type { ChangeAct } from "../../../../handover/change/changeInHand";
import { focusDial } from "../../../hand/dial/focusDial";
import { Button } from "../../../parts/controls/Button";
import { type RefusedAct, refusedWords, whyNot } from "./changeWords";
import "./change.css";

interface Choice<Kind extends ChangeAct> {
  readonly act: Kind;
  readonly label: string;
}

/** Acts with the change key, in the order of the work. */
export const WITH_KEY = [
  { act: "insertKey", label: "Insert the key" },
  { act: "turnKey", label: "Turn the key" },
  { act: "turnKeyBack", label: "Turn the key back" },
  { act: "withdrawKey", label: "Remove the key" },
] as const;

export const WITH_BUTTON = [{ act: "pressButton", label: "Press the change button" }] as const;

interface KeyActsProps<Kind extends ChangeAct> {
  readonly change: Change;
  readonly legend: string;
  readonly choices: readonly Choice<Kind>[];
  /** What came of the last act. */
  readonly said: string;
  /** Whether an act in vain is told as the hand feels it, and no advice with it. */
  readonly isOnce: boolean;
  readonly onAct: (act: Kind) => void;
  /** An act was tried that there is not now. */
  readonly onVain: (why: RefusedAct) => void;
}

/** The change key, or the change button: all there is to do besides dialing. What cannot be done now says why. */
export function KeyActs<Kind extends ChangeAct>(props: KeyActsProps<Kind>) {
  const { change, legend, choices, said, isOnce, onAct, onVain } = props;
  const id = useId();
  const press = (event: MouseEvent, act: Kind) => {
    const why = whyNot(change, act);
    if (why === null) onAct(act);
    else onVain(why);
    // A pointer leaves the keys to the dial; whoever came here by keyboard stays.
    if (event.detail > 0) focusDial();
  };
  return (
    <div className="change-acts w-full text-center">
      <fieldset>
        <legend className="visually-hidden">{legend}</legend>
        {choices.map(({ act, label }) => {
          const why = whyNot(change, act);
          return (
            <Fragment key={act}>
              <Button
                // It stays in the tab order: what is pressed in vain must not drop the focus.
                aria-disabled={why !== null}
                aria-describedby={why === null ? undefined : `${id}-${act}`}
                onClick={(event) => press(event, act)}
              >
                {label}
              </Button>
              {why !== null && (
                <span id={`${id}-${act}`} hidden>
                  {refusedWords(why, isOnce)}
                </span>
              )}
            </Fragment>
          );
        })}
      </fieldset>
      <p className="change-refusal min-h-[1.5em] mt-2 text-small" role="status">
        {said}
      </p>
    </div>
  );
}
