import type { KeyboardEvent } from "react";
import { progressOf } from "../../../../dialing/progress";
import { readingText } from "../../../../dialing/words";
import type { TroubleState } from "../../../../handover/trouble/troubleMachine";
import { reading } from "../../../../lock/dial";
import { Dial } from "../../../hand/dial/Dial";
import { plainKey } from "../../../hand/dial/plainKey";
import { spokenReading } from "../../../hand/dial/spokenReading";
import { useDialClicks } from "../../../hand/dial/useDialClicks";
import { type StepView, stepViews } from "../../../hand/stepViews";
import { TurnButtons } from "../../../hand/TurnButtons";
import { useTurn } from "../../zeroing/useZeroing";
import { NumberPlate } from "./NumberPlate";
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
  readonly hasSound: boolean;
}

/** The lock in trouble under the trainee's own hand. The dial is drawn as the index reads it: how the index stands is not to be seen. */
export function TroubleHand({ session, isOnce, hasSound }: TroubleHandProps) {
  const { lock } = session.bench;
  const { profile } = lock.card;
  const { help } = session.setup;
  const onTurn = useTurn(session);
  const closed = isOnce && session.state === "told" ? "This try has ended." : CLOSED[session.state];
  useDialClicks(lock.seen, hasSound);
  const shown = readingText(reading(lock.seen, profile.graduations), profile);
  const onOtherKey = (event: KeyboardEvent) => {
    if (isOnce) return;
    const key = plainKey(event);
    if (key === "r") session.again();
    if (key === "n") session.another();
  };
  return (
    <>
      <NumberPlate
        card={lock.card}
        steps={help === "silent" ? null : handSteps(session)}
        end={lock.end === null ? "" : END[lock.end]}
      />
      <div className="workplace-dial">
        <Dial
          position={lock.seen}
          graduations={profile.graduations}
          numbersIncrease={profile.numbersIncrease}
          spoken={spokenReading(shown)}
          pointTo={null}
          hub={help === "full" ? { reading: shown, note: "at the index" } : null}
          describedBy="trouble-keys"
          onTurn={onTurn}
          onOtherKey={onOtherKey}
        />
        <p id="trouble-keys" className="visually-hidden">
          Arrow keys turn the way they point, by one; hold them to keep turning. Comma and period nudge by a tenth. Page
          Up and Page Down turn by ten, with Shift by a whole turn.
          {!isOnce && " R begins again with this lock, N takes another."}
        </p>
      </div>
      {closed === undefined ? (
        <TurnButtons perTurn={profile.graduations} onTurn={onTurn} />
      ) : (
        <p className="trouble-soft">{closed}</p>
      )}
    </>
  );
}
