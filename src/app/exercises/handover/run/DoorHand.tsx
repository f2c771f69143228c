import type { ReactNode } from "react";
import { faceText, ordinalWord, readingText } from "../../../../dialing/words";
import { reading } from "../../../../lock/dial";
import type { Profile } from "../../../../lock/profile";
import { Dial } from "../../../hand/dial/Dial";
import { spokenReading } from "../../../hand/dial/spokenReading";
import { TurnButtons } from "../../../hand/TurnButtons";
import type { HandoverSession } from "./session/handoverSession";

/** How a combination is dialed, in a line: "left, the fourth time at 38; right, …". */
function procedureText(profile: Profile, numbers: readonly number[]): string {
  const legs = profile.procedure.map(
    ({ turn, arrivals }, k) => `${turn}, the ${ordinalWord(arrivals)} time at ${faceText(numbers[k] ?? 0, profile)}`,
  );
  return `${legs.join("; ")}; then ${profile.draw.turn} until it stops`;
}

interface DoorHandProps {
  readonly session: HandoverSession;
  /** On the ring while it is loose. */
  readonly grip?: ReactNode;
  /** Beside the dial, to see something near. */
  readonly loupe?: ReactNode;
  /** Above the dial, in the place of the buttons that turn it. */
  readonly controls?: ReactNode;
}

/** The lock on the door under the hand. */
export function DoorHand({ session, grip, loupe, controls }: DoorHandProps) {
  const { profile } = session.setup;
  const { hand, meant } = session.lock;
  const shown = readingText(reading(hand.seen, profile.graduations), profile);
  const onTurn = (by: number, at: number) => session.turnBy(by, at);
  return (
    <>
      <p className="run-numbers">
        Combination{" "}
        <strong data-testid="run-combination">{meant.map((number) => faceText(number, profile)).join("-")}</strong>
        <small> {procedureText(profile, meant)}</small>
      </p>
      {controls}
      <div className="workplace-dial">
        <Dial
          position={hand.dial}
          graduations={profile.graduations}
          numbersIncrease={profile.numbersIncrease}
          ringTurn={hand.indexError}
          spoken={spokenReading(shown)}
          pointTo={null}
          hub={{ reading: shown, note: session.lock.retraction === 1 ? "bolt back" : "at the index" }}
          describedBy="run-keys"
          changingIndex={profile.kind === "wheel-pack" ? profile.changing?.index : undefined}
          surround={18}
          onTurn={onTurn}
        >
          <path className="zeroing-witness" d="M 0 -254 V -270" />
          {grip}
        </Dial>
        {loupe && <div className="zeroing-loupe">{loupe}</div>}
        <p id="run-keys" className="visually-hidden">
          Arrow keys turn the way they point, by one; hold them to keep turning, with Shift fast. Comma and period nudge
          by a tenth. Page Up and Page Down turn by ten, with Shift by a whole turn.
        </p>
      </div>
      {!controls && <TurnButtons perTurn={profile.graduations} onTurn={onTurn} />}
    </>
  );
}
