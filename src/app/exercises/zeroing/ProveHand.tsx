import type { KeyboardEvent } from "react";
import { adviceFor } from "../../../dialing/advice";
import { readingText } from "../../../dialing/words";
import { reading } from "../../../lock/dial";
import { AdviceLine } from "../../hand/AdviceLine";
import { Dial } from "../../hand/dial/Dial";
import { plainKey } from "../../hand/dial/plainKey";
import { spokenReading } from "../../hand/dial/spokenReading";
import { StepStrip } from "../../hand/StepStrip";
import { TurnButtons } from "../../hand/TurnButtons";
import { Magnifier } from "./Magnifier";
import type { ProveSession } from "./proveSession";
import { useStore, useTurn } from "./useZeroing";

/** The lock just zeroed, under the hand: the hand goes by the index, the lock by its zeros. */
export function ProveHand({ prove, hasLoupe }: { readonly prove: ProveSession; readonly hasLoupe: boolean }) {
  useStore(prove);
  const onTurn = useTurn(prove);
  const { lock, profile, attempt, state } = prove;
  const shown = readingText(reading(lock.seen, profile.graduations), profile);
  const help = hasLoupe ? "full" : "silent";
  const advice = adviceFor(attempt, state, help);
  const onOtherKey = (event: KeyboardEvent) => {
    if (plainKey(event) === "r") prove.again();
  };
  return (
    <>
      <StepStrip attempt={attempt} state={state} help={help} />
      <AdviceLine advice={advice} note={null} onLeave={null} />
      <div className="workplace-dial zeroing-dial">
        <Dial
          position={lock.dial}
          graduations={profile.graduations}
          numbersIncrease={profile.numbersIncrease}
          ringTurn={lock.indexError}
          surround={20}
          spoken={spokenReading(shown)}
          pointTo={advice?.turn ?? null}
          hub={hasLoupe ? { reading: shown, note: "at the index" } : null}
          describedBy="prove-keys"
          onTurn={onTurn}
          onOtherKey={onOtherKey}
        />
        {hasLoupe && (
          <div className="zeroing-loupe">
            <Magnifier seen={lock.seen} graduations={profile.graduations} numbersIncrease={profile.numbersIncrease} />
          </div>
        )}
        <p id="prove-keys" className="visually-hidden">
          Arrow keys turn the way they point, by one; comma and period nudge by a tenth. R begins again.
        </p>
        <button type="button" className="button workplace-again" aria-keyshortcuts="R" onClick={() => prove.again()}>
          Again <kbd>R</kbd>
        </button>
      </div>
      <TurnButtons perTurn={profile.graduations} onTurn={onTurn} />
    </>
  );
}
