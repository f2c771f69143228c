import type { KeyboardEvent } from "react";
import { type Advice, adviceFor, type Help } from "../../../dialing/advice";
import type { Attempt } from "../../../dialing/attempt";
import type { DialingState } from "../../../dialing/dialingMachine";
import type { Graduations, Milliseconds } from "../../../lock/dial";
import { AdviceLine } from "../../hand/AdviceLine";
import { Dial } from "../../hand/dial/Dial";
import { focusDial } from "../../hand/dial/focusDial";
import type { HubText } from "../../hand/dial/Hub";
import { plainKey } from "../../hand/dial/plainKey";
import { HandButtons } from "../../hand/HandButtons";
import type { HubStrength } from "../../hand/hubReading";
import { StepStrip } from "../../hand/StepStrip";
import { dialReadingText, lastTurn, spokenDial } from "../../hand/spoken";
import { TurnButtons } from "../../hand/TurnButtons";
import type { HubReading } from "../../hand/useHubReading";
import type { BenchSession } from "./benchSession";
import { KEYS_HELP } from "./keysHelp";
import { lockNote, verdictOf } from "./lockNote";
import { useWaitingSeconds } from "./useBench";

/** Keys that begin again, and whether with new numbers. */
const RESTART_KEYS: Readonly<Record<string, boolean>> = { r: false, n: true };

/** What full help shows on the dial itself; less help shows nothing there. */
const helpOnDial = (help: Help, lock: Attempt, strength: HubStrength, advice: Advice | null) =>
  help === "full" ? { pointTo: advice?.turn ?? null, hub: hubText(lock, strength) } : { pointTo: null, hub: null };

const hubText = (lock: Attempt, strength: HubStrength): HubText => {
  const turn = lastTurn(lock);
  return {
    reading: strength === "hidden" ? "" : dialReadingText(lock),
    note: turn === null ? "at rest" : `turning ${turn}`,
    isFaint: strength === "faint",
  };
};

interface LockInHandProps {
  readonly lock: Attempt;
  readonly session: BenchSession;
  readonly state: DialingState;
  readonly isLive: boolean;
  /** Whether what happened stays hidden until an own estimate is given. */
  readonly isWithheld: boolean;
  readonly reading: HubReading;
  readonly onTurn: (by: Graduations, at: Milliseconds) => void;
  readonly onRestart: (isNew: boolean) => void;
  /** Leaves a replay. */
  readonly onLeave: () => void;
}

/** The advice of the moment. Once an attempt is over, every help says how it ended and what to do with the lock. */
const adviceNow = ({ attempt, outcome, setup }: BenchSession, state: DialingState) =>
  adviceFor(attempt, state, outcome === null ? setup.help : "full");

/** A key that is not the dial's own. */
function takeKey(event: KeyboardEvent, { onRestart, reading }: Pick<LockInHandProps, "onRestart" | "reading">): void {
  const key = plainKey(event) ?? "";
  const isNew = RESTART_KEYS[key];
  if (isNew !== undefined) onRestart(isNew);
  else if (key === "d") reading.toggle?.();
}

/** The dial, what is said above it, and its buttons. */
export function LockInHand(props: LockInHandProps) {
  const { lock, session, state, isLive, isWithheld, reading, onTurn, onRestart, onLeave } = props;
  const { setup, outcome } = session;
  const { help } = setup;
  const { profile } = lock;
  const shown = isLive ? session.attempt : lock;
  const advice = isLive ? adviceNow(session, state) : null;
  const waiting_s = useWaitingSeconds(session.lock.memory);
  const isAsked = isWithheld && outcome !== null;
  // The hand goes back to the dial, where the keys are.
  const restart = (isNew: boolean) => {
    onRestart(isNew);
    focusDial();
  };
  return (
    <>
      <StepStrip attempt={shown} state={state} help={isLive ? help : "full"} />
      <AdviceLine
        advice={advice}
        note={lockNote({ outcome, waiting_s, isLive, isAsked })}
        onLeave={isLive ? null : onLeave}
        verdict={isLive ? verdictOf(state, outcome) : null}
      />
      <div className="workplace-dial">
        <Dial
          position={lock.dial}
          graduations={profile.graduations}
          numbersIncrease={profile.numbersIncrease}
          windUp={isLive ? session.windUp : 0}
          spoken={spokenDial(lock, help)}
          {...helpOnDial(help, lock, reading.strength, waiting_s === 0 ? advice : null)}
          isOpen={state === "open"}
          describedBy="dial-keys"
          onTurn={onTurn}
          onOtherKey={(event) => takeKey(event, props)}
        />
        <p id="dial-keys" className="visually-hidden">
          {KEYS_HELP.join(" ")}
        </p>
        <HandButtons reading={reading} onRestart={restart} />
      </div>
      <TurnButtons perTurn={profile.graduations} onTurn={onTurn} />
    </>
  );
}
