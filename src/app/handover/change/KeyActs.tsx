import type { MouseEvent } from "react";
import { PackChange } from "../../../handover/change/packChange";
import { focusDial } from "../../dial/focusDial";
import type { Act, ChangeSession } from "./changeSession";
import { feltWords, REFUSED } from "./changeWords";

interface Choice {
  readonly act: Act;
  readonly label: string;
  readonly isPossible: boolean;
}

function choicesOf({ change }: ChangeSession): Choice[] {
  const shut: Choice = { act: "shutDoor", label: "Shut the door", isPossible: !change.isDoorShut };
  if (!(change instanceof PackChange)) {
    return [{ act: "pressButton", label: "Press the change button", isPossible: !change.isDoorShut }, shut];
  }
  const { key } = change.keyed;
  const isOpen = !change.isDoorShut;
  return [
    { act: "insertKey", label: "Put the key in", isPossible: isOpen && key === "out" },
    { act: "turnKey", label: "Turn the key", isPossible: key === "in" },
    { act: "turnKeyBack", label: "Turn it back", isPossible: key === "turned" },
    { act: "withdrawKey", label: "Take the key out", isPossible: key !== "out" },
    shut,
  ];
}

interface KeyActsProps {
  readonly session: ChangeSession;
  /** Whether an act in vain is told as the hand feels it, and no advice with it. */
  readonly isOnce: boolean;
}

/** The change key, or the change button, and the door: all there is to do besides dialing. */
export function KeyActs({ session, isOnce }: KeyActsProps) {
  const { change, refused } = session;
  const refusal = refused === null ? "" : REFUSED[refused];
  const canChangeAgain = change instanceof PackChange && change.proof !== null && !change.isDoorShut;
  const press = (event: MouseEvent, act: Act) => {
    session.act(act);
    // A pointer leaves the keys to the dial; whoever came here by keyboard stays.
    if (event.detail > 0) focusDial();
  };
  return (
    <div className="change-acts">
      <fieldset>
        <legend className="visually-hidden">
          {change instanceof PackChange ? "Change key and door" : "Change button and door"}
        </legend>
        {choicesOf(session).map(({ act, label, isPossible }) => (
          <button
            key={act}
            type="button"
            className="button"
            // It stays in the tab order: what is pressed in vain must not drop the focus.
            aria-disabled={!isPossible}
            onClick={(event) => isPossible && press(event, act)}
          >
            {label}
          </button>
        ))}
        {canChangeAgain && (
          <button type="button" className="button" onClick={(event) => press(event, "changeAgain")}>
            Change it again
          </button>
        )}
      </fieldset>
      <p className="change-refusal" role="status">
        {isOnce ? feltWords(change, refused) : refusal}
      </p>
    </div>
  );
}
