import type { ReactNode } from "react";
import { faceText, ordinalWord } from "../../../../dialing/words";
import type { Profile } from "../../../../lock/profile";
import { LockInHand } from "../../../hand/LockInHand";
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
  const { hand, meant, retraction } = session.lock;
  return (
    <>
      <p className="text-center">
        Combination{" "}
        <strong className="text-title font-semibold" data-testid="run-combination">
          {meant.map((number) => faceText(number, profile)).join("-")}
        </strong>
        <small className="block text-balance"> {procedureText(profile, meant)}</small>
      </p>
      {controls}
      <LockInHand
        profile={profile}
        dial={hand.dial}
        held={session}
        ringTurn={hand.indexError}
        hasChangingIndex
        bolt={retraction === 1 ? "back" : null}
        digits="always"
        surround={18}
        loupe={loupe}
        hasControls={!controls}
      >
        <path className="stroke-ink" strokeWidth={2.4} d="M 0 -254 V -270" />
        {grip}
      </LockInHand>
    </>
  );
}
