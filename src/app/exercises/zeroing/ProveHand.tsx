import { useSelector } from "@xstate/react";
import { adviceFor } from "../../../dialing/advice";
import { AdviceLine } from "../../hand/AdviceLine";
import { boltOf } from "../../hand/bolt";
import { againAct } from "../../hand/handActs";
import { LockInHand } from "../../hand/LockInHand";
import { StepStrip } from "../../hand/StepStrip";
import { useHandStore } from "../../hand/useHandStore";
import { stateOf } from "../../parts/page/ofChart";
import { Magnifier } from "./Magnifier";
import type { ProveSession } from "./session/proveSession";

/** The lock just zeroed, under the hand: the hand goes by the index, the lock by its zeros. */
export function ProveHand({ prove, hasLoupe }: { readonly prove: ProveSession; readonly hasLoupe: boolean }) {
  useHandStore(prove);
  const { lock, profile, attempt } = prove;
  const state = useSelector(prove.chart, stateOf);
  const help = hasLoupe ? "full" : "silent";
  const advice = adviceFor(attempt, state, help);
  return (
    <>
      <StepStrip attempt={attempt} state={state} help={help} />
      <AdviceLine advice={advice} note={null} onLeave={null} />
      <LockInHand
        profile={profile}
        dial={lock.dial}
        held={prove}
        ringTurn={lock.indexError}
        surround={20}
        bolt={boltOf(state)}
        isCoupled={attempt.isCoupled}
        digits={hasLoupe ? "always" : "none"}
        pointTo={advice?.turn ?? null}
        acts={[againAct(() => prove.again(), "begins again")]}
        loupe={hasLoupe && <Magnifier seen={lock.seen} profile={profile} />}
      />
    </>
  );
}
