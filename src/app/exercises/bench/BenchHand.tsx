import { type Advice, adviceFor, type Help } from "../../../dialing/advice";
import type { Attempt } from "../../../dialing/attempt";
import type { DialingState } from "../../../dialing/dialingMachine";
import { AdviceLine } from "../../hand/AdviceLine";
import { boltOf } from "../../hand/bolt";
import type { HandAct } from "../../hand/handActs";
import type { HeldDial } from "../../hand/heldDial";
import { LockInHand } from "../../hand/LockInHand";
import { StepStrip } from "../../hand/StepStrip";
import { useWaitingSeconds } from "../../hand/timePasses";
import type { BenchSession } from "./benchSession";
import { lockNote, verdictOf } from "./lockNote";

interface BenchHandProps {
  readonly lock: Attempt;
  readonly session: BenchSession;
  readonly state: DialingState;
  readonly isLive: boolean;
  /** Whether what happened stays hidden until an own estimate is given. */
  readonly isWithheld: boolean;
  readonly acts: readonly HandAct[];
  readonly held: HeldDial;
  /** Leaves a replay. */
  readonly onLeave: () => void;
}

/** The advice of the moment. Once an attempt is over, every help says how it ended and what to do with the lock. */
const adviceNow = ({ attempt, outcome, setup }: BenchSession, state: DialingState) =>
  adviceFor(attempt, state, outcome === null ? setup.help : "full");

/** Full help points the way. A lock that waits after wrong tries is not to be turned. */
const wayOf = (help: Help, advice: Advice | null, waiting_s: number) =>
  help === "full" && waiting_s === 0 ? (advice?.turn ?? null) : null;

/** The dial of the bench, and what is said above it. */
export function BenchHand({ lock, session, state, isLive, isWithheld, acts, held, onLeave }: BenchHandProps) {
  const { outcome } = session;
  const { help } = session.setup;
  const shown = isLive ? session.attempt : lock;
  const advice = isLive ? adviceNow(session, state) : null;
  const waiting_s = useWaitingSeconds(session.lock.memory);
  const isAsked = isWithheld && outcome !== null;
  return (
    <>
      <StepStrip attempt={shown} state={state} help={isLive ? help : "full"} />
      <AdviceLine
        advice={advice}
        note={lockNote({ outcome, waiting_s, isLive, isAsked })}
        onLeave={isLive ? null : onLeave}
        verdict={isLive ? verdictOf(state, outcome) : null}
      />
      <LockInHand
        profile={lock.profile}
        dial={isLive ? session.dial : lock.dial}
        ringTurn={isLive ? session.indexError : 0}
        held={held}
        bolt={boltOf(state)}
        isCoupled={lock.isCoupled}
        isReplay={!isLive}
        dialed={lock}
        help={help}
        digits={help === "full" ? "fading" : "none"}
        pointTo={wayOf(help, advice, waiting_s)}
        acts={acts}
      />
    </>
  );
}
