import { useSelector } from "@xstate/react";
import { adviceFor, type Help } from "../../../dialing/advice";
import { stateInWords } from "../../../dialing/dialingMachine";
import { AdviceLine } from "../../hand/AdviceLine";
import type { HeldDial } from "../../hand/heldDial";
import { LockInHand } from "../../hand/LockInHand";
import { StepStrip } from "../../hand/StepStrip";
import { memoryOf, stateOf } from "../../parts/page/ofChart";
import { TRY_ENDED } from "../../results/sheetWords";
import type { DialingTry } from "../tries/dialingTry";

interface DialingStationHandProps {
  readonly one: DialingTry;
  readonly held: HeldDial;
}

/** An index that stands off changes what is read, not what the lock counts: arrivals are told of a true one. */
const spokenHelp = ({ indexError, dial, attempt, setup }: DialingTry): Help =>
  indexError === 0 && dial === attempt.dial ? setup.station.help : "silent";

/** The dial of a dialing try, with the help that the sheet gives and no way to begin again. */
export function DialingStationHand({ one, held }: DialingStationHandProps) {
  const { attempt, setup, isEnded } = one;
  const state = useSelector(one.chart, stateOf);
  const { number } = useSelector(one.chart, memoryOf);
  const { help } = setup.station;
  const isSilent = isEnded || help === "silent";
  const advice = isEnded ? null : adviceFor(attempt, state, help);
  return (
    <>
      {/* In silence the strip tells the numbers to dial, and not what the bolt did. */}
      <StepStrip attempt={attempt} state={isSilent ? "waiting" : state} help={isSilent ? "silent" : help} />
      <AdviceLine advice={advice} note={isEnded ? TRY_ENDED : null} onLeave={null} />
      <p className="visually-hidden" role="status">
        {isSilent ? "" : stateInWords(state, number)}
      </p>
      <LockInHand
        profile={attempt.profile}
        dial={one.dial}
        ringTurn={one.indexError}
        held={held}
        dialed={attempt}
        help={spokenHelp(one)}
        digits={help === "full" ? "fading-without-switch" : "none"}
        pointTo={help === "full" ? (advice?.turn ?? null) : null}
        keysMore={["You cannot start a try again."]}
      />
    </>
  );
}
