import type { KeyboardEvent } from "react";
import { readingText } from "../../../dialing/words";
import { type Graduations, type Milliseconds, reading, type Turn } from "../../../lock/dial";
import type { Profile } from "../../../lock/profile";
import { Dial } from "../../hand/dial/Dial";
import { focusDial } from "../../hand/dial/focusDial";
import { plainKey } from "../../hand/dial/plainKey";
import { spokenReading } from "../../hand/dial/spokenReading";
import { TurnButtons } from "../../hand/TurnButtons";
import { signedText } from "../../parts/signedText";
import { Magnifier } from "./Magnifier";
import { RingControls } from "./RingControls";
import { RingGrip } from "./RingGrip";
import { RingLoupe } from "./RingLoupe";
import { Sockets } from "./Sockets";
import type { ZeroingSession } from "./zeroingSession";

interface ZeroingHandProps {
  readonly session: ZeroingSession;
  readonly profile: Profile;
  /** How far the hand is ahead of a heavy dial, graduations. */
  readonly windUp?: Graduations;
  /** Whether the loupe and the reading in the hub are to be seen. */
  readonly hasLoupe: boolean;
  /** Which way to point, or null. */
  readonly pointTo: Turn | null;
  readonly onTurn: (by: Graduations, at: Milliseconds) => void;
  /** The one thing to do besides turning: record a stop; null where there is none. */
  readonly onReading: (() => void) | null;
  /** Begins again, with this lock or another; null where there is no second chance. */
  readonly onRestart: ((isNew: boolean) => void) | null;
}

const KEYS_HELP =
  "Arrow keys turn the way they point, by one; hold them to keep turning, with Shift fast. Comma and period nudge by a tenth. Space records a stop.";

const RESTART_HELP = " R begins again with this lock, N takes another.";

/** The reading at the index as drawn, unwrapped into words for a screen reader: close to zero its side is told. */
function spokenSeen(session: ZeroingSession, profile: Profile): string {
  const { seen, seenDeviation, perTurn } = session.lock;
  if (Math.abs(seenDeviation) > 3) return spokenReading(readingText(reading(seen, perTurn), profile));
  const size = Math.abs(seenDeviation).toFixed(1);
  if (size === "0.0") return "on zero";
  return `${spokenReading(size)} ${seenDeviation > 0 ? "left" : "right"} of zero`;
}

function RestartButtons({ onRestart }: { readonly onRestart: (isNew: boolean) => void }) {
  return (
    <>
      <button type="button" className="button workplace-again" aria-keyshortcuts="R" onClick={() => onRestart(false)}>
        Again <kbd>R</kbd>
      </button>
      <button type="button" className="button workplace-new" aria-keyshortcuts="N" onClick={() => onRestart(true)}>
        New lock <kbd>N</kbd>
      </button>
    </>
  );
}

/** The dial to be zeroed, its sockets, the loupe and the controls beside it. */
export function ZeroingHand(props: ZeroingHandProps) {
  const { session, profile, hasLoupe, pointTo, onTurn, onReading, onRestart } = props;
  const { lock, setup, state } = session;
  const onOtherKey = (event: KeyboardEvent) => {
    const key = plainKey(event);
    if (key === " ") {
      event.preventDefault();
      onReading?.();
    }
    if (key === "r") onRestart?.(false);
    if (key === "n") onRestart?.(true);
  };
  const shown = readingText(reading(lock.seen, setup.graduations), profile);
  return (
    <>
      {state === "ringLoose" && <RingControls session={session} />}
      <div className="workplace-dial zeroing-dial">
        <Dial
          position={lock.dial}
          graduations={setup.graduations}
          numbersIncrease={profile.numbersIncrease}
          ringTurn={lock.indexError}
          windUp={props.windUp ?? 0}
          surround={58}
          spoken={spokenSeen(session, profile)}
          pointTo={pointTo}
          hub={hasLoupe ? { reading: shown, note: `${signedText(lock.seenDeviation)} off zero` } : null}
          describedBy="zeroing-keys"
          onTurn={onTurn}
          onOtherKey={onOtherKey}
        >
          <path className="zeroing-witness" d="M 0 -256 V -276" />
          {state === "ringLoose" && <RingGrip session={session} />}
          <Sockets
            accepted={session.memory.accepted}
            wanted={session.memory.wanted}
            asked={session.asked}
            isSet={state === "zeroSet"}
            order={setup.rules.order}
            last={session.last}
          />
        </Dial>
        {hasLoupe && state === "ringLoose" && (
          <div className="zeroing-loupe">
            <RingLoupe error={lock.indexError} />
          </div>
        )}
        {hasLoupe && state !== "ringLoose" && (
          <div className="zeroing-loupe">
            <Magnifier seen={lock.seen} graduations={setup.graduations} numbersIncrease={profile.numbersIncrease} />
          </div>
        )}
        <p id="zeroing-keys" className="visually-hidden">
          {KEYS_HELP}
          {onRestart !== null && RESTART_HELP}
        </p>
        {onRestart !== null && <RestartButtons onRestart={onRestart} />}
      </div>
      <div className="zeroing-controls" hidden={state === "ringLoose"}>
        <TurnButtons perTurn={setup.graduations} onTurn={onTurn} />
        <button
          type="button"
          className="button primary"
          disabled={onReading === null}
          aria-keyshortcuts="Space"
          onClick={(event) => {
            onReading?.();
            if (event.detail > 0) focusDial();
          }}
        >
          Record this stop <kbd>space</kbd>
        </button>
      </div>
    </>
  );
}
