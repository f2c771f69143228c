import { useSelector } from "@xstate/react";
import type { HandledLock } from "../../../../dialing/attempt";
import type { DialingState } from "../../../../dialing/dialingMachine";
import { progressOf } from "../../../../dialing/progress";
import type { TroubleState } from "../../../../handover/trouble/troubleMachine";
import { LockInHand } from "../../../hand/LockInHand";
import { StepStrip } from "../../../hand/StepStrip";
import { stateOf } from "../../../parts/page/ofChart";
import { TRY_ENDED } from "../../../results/sheetWords";
import { troubleActs } from "./troubleActs";
import type { TroubleSession } from "./troubleSession";

/** Why the dial does not turn. */
const CLOSED: Partial<Record<TroubleState, string>> = {
  named: "You named a defect. Take it back to go on measuring.",
  told: "The answer is shown. Take the same lock again, or another.",
};

/** Where the hand is by the index; how the lock takes it is not known before the end. */
function handState({ reader, profile }: HandledLock, step: number): DialingState {
  if (reader.legs.length === 0) return "waiting";
  return step === profile.procedure.length ? "drawing" : "turning";
}

interface TroubleHandProps {
  readonly session: TroubleSession;
  /** Whether there is this one try: nothing begins again. */
  readonly isOnce: boolean;
}

/** The lock in trouble under the trainee's own hand. The dial is drawn as the index reads it: how the index stands is not to be seen. */
export function TroubleHand({ session, isOnce }: TroubleHandProps) {
  const { lock } = session.bench;
  const { byIndex } = lock;
  const { profile } = lock.card;
  const { help } = session.setup;
  const state = useSelector(session.chart, stateOf);
  const closed = isOnce && state === "told" ? TRY_ENDED : CLOSED[state];
  return (
    <>
      <StepStrip
        attempt={byIndex}
        state={handState(byIndex, progressOf(byIndex).step)}
        help={help}
        end={{ say: `${profile.draw.turn} to the stop`, came: lock.end ?? "–", isCurrent: false }}
      />
      <LockInHand
        profile={profile}
        dial={lock.seen}
        held={session}
        bolt={lock.end === "opened" ? "back" : null}
        digits={help === "full" ? (isOnce ? "fading-without-switch" : "fading") : "none"}
        acts={isOnce ? [] : troubleActs(session)}
        hasControls={closed === undefined}
      />
      {closed !== undefined && <p className="text-soft">{closed}</p>}
    </>
  );
}
