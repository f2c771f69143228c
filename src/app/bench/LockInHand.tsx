import type { KeyboardEvent } from "react";
import { adviceFor } from "../../dialing/advice";
import type { Attempt } from "../../dialing/attempt";
import type { DialingState } from "../../dialing/dialingMachine";
import type { Graduations, Milliseconds } from "../../lock/dial";
import { Dial } from "../dial/Dial";
import { focusDial } from "../dial/focusDial";
import { plainKey } from "../dial/plainKey";
import { AdviceLine } from "./AdviceLine";
import type { BenchSession } from "./benchSession";
import { StepStrip } from "./StepStrip";
import { dialReadingText, lastTurn, spokenDial } from "./spoken";
import { TurnButtons } from "./TurnButtons";
import { useWaitingSeconds } from "./useBench";

const KEYS_HELP =
  "Arrow keys turn the way they point, by one; hold them to keep turning, with Shift fast. Comma and period nudge by a tenth. Page Up and Page Down turn by ten, with Shift by a whole turn. R starts again, N draws a new combination.";

/** Keys that begin again, and whether with new numbers. */
const RESTART_KEYS: Readonly<Record<string, boolean>> = { r: false, n: true };

const noteText = (waiting: number, isLive: boolean, isAsked: boolean) => {
  if (isAsked) return "How far off was your worst stop? Say it, and see.";
  if (waiting > 0) return `This lock refuses every try for ${waiting} s more.`;
  return isLive ? null : "Replay. Turn the dial to go back to the lock.";
};

const hubText = (lock: Attempt) => {
  const turn = lastTurn(lock);
  return { reading: dialReadingText(lock), note: turn === null ? "at rest" : `turning ${turn}` };
};

interface LockInHandProps {
  readonly lock: Attempt;
  readonly session: BenchSession;
  readonly state: DialingState;
  readonly isLive: boolean;
  /** Whether what happened stays hidden until an own estimate is given. */
  readonly isWithheld: boolean;
  readonly onTurn: (by: Graduations, at: Milliseconds) => void;
  readonly onRestart: (isNew: boolean) => void;
  /** Leaves a replay. */
  readonly onLeave: () => void;
}

/** The dial, what is said above it, and its buttons. */
export function LockInHand(props: LockInHandProps) {
  const { lock, session, state, isLive, isWithheld, onTurn, onRestart, onLeave } = props;
  const { help } = session.setup;
  const { profile } = lock;
  const shown = isLive ? session.attempt : lock;
  const advice = isLive ? adviceFor(shown, state, help) : null;
  const waiting = useWaitingSeconds(session.lock.memory);
  // The hand goes back to the dial, where the keys are.
  const restart = (isNew: boolean) => {
    onRestart(isNew);
    focusDial();
  };
  const onOtherKey = (event: KeyboardEvent) => {
    const isNew = RESTART_KEYS[plainKey(event) ?? ""];
    if (isNew !== undefined) onRestart(isNew);
  };
  return (
    <>
      <StepStrip attempt={shown} state={state} help={isLive ? help : "full"} />
      <AdviceLine
        advice={advice}
        note={noteText(waiting, isLive, isWithheld && session.outcome !== null)}
        onLeave={isLive ? null : onLeave}
      />
      <div className="workplace-dial">
        <Dial
          position={lock.dial}
          graduations={profile.graduations}
          numbersIncrease={profile.numbersIncrease}
          windUp={isLive ? session.windUp : 0}
          spoken={spokenDial(lock, help)}
          pointTo={help === "full" && waiting === 0 ? (advice?.turn ?? null) : null}
          hub={help === "full" ? hubText(lock) : null}
          describedBy="dial-keys"
          onTurn={onTurn}
          onOtherKey={onOtherKey}
        />
        <p id="dial-keys" className="visually-hidden">
          {KEYS_HELP}
        </p>
        <button type="button" className="button workplace-again" aria-keyshortcuts="R" onClick={() => restart(false)}>
          Again <kbd>R</kbd>
        </button>
        <button type="button" className="button workplace-new" aria-keyshortcuts="N" onClick={() => restart(true)}>
          New numbers <kbd>N</kbd>
        </button>
      </div>
      <TurnButtons perTurn={profile.graduations} onTurn={onTurn} />
    </>
  );
}
