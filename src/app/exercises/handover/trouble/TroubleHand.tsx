import { progressOf } from "../../../../dialing/progress";
import type { TroubleState } from "../../../../handover/trouble/troubleMachine";
import { LockInHand } from "../../../hand/LockInHand";
import { type StepView, stepViews } from "../../../hand/stepViews";
import { NumberPlate } from "./NumberPlate";
import { troubleActs } from "./troubleActs";
import type { TroubleSession } from "./troubleSession";

/** Why the dial does not turn. */
const CLOSED: Partial<Record<TroubleState, string>> = {
  named: "You named a defect. Take it back to go on measuring.",
  told: "The answer is shown. Take the same lock again, or another.",
};

const END = { opened: "opened", refused: "refused" } as const;

/** The steps by what the hand does at the index; how the lock takes it is not known before the end. */
function handSteps(session: TroubleSession): readonly StepView[] {
  const { byIndex } = session.bench.lock;
  const isDrawing = progressOf(byIndex).step === byIndex.profile.procedure.length;
  const state = byIndex.reader.legs.length === 0 ? "waiting" : isDrawing ? "drawing" : "turning";
  return stepViews(byIndex, state).numbers;
}

interface TroubleHandProps {
  readonly session: TroubleSession;
  /** Whether there is this one try: nothing begins again. */
  readonly isOnce: boolean;
}

/** The lock in trouble under the trainee's own hand. The dial is drawn as the index reads it: how the index stands is not to be seen. */
export function TroubleHand({ session, isOnce }: TroubleHandProps) {
  const { lock } = session.bench;
  const { help } = session.setup;
  const closed = isOnce && session.state === "told" ? "This try has ended." : CLOSED[session.state];
  return (
    <>
      <NumberPlate
        card={lock.card}
        steps={help === "silent" ? null : handSteps(session)}
        end={lock.end === null ? "" : END[lock.end]}
      />
      <LockInHand
        profile={lock.card.profile}
        dial={lock.seen}
        held={session}
        bolt={lock.end === "opened" ? "back" : null}
        digits={help === "full" ? (isOnce ? "fading-without-switch" : "fading") : "none"}
        acts={isOnce ? [] : troubleActs(session)}
        hasControls={closed === undefined}
      />
      {closed !== undefined && <p className="trouble-soft">{closed}</p>}
    </>
  );
}
