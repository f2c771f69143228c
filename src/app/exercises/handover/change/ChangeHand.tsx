import { useSelector } from "@xstate/react";
import { type Advice, heardAdvice } from "../../../../dialing/advice";
import type { DialingState } from "../../../../dialing/dialingMachine";
import type { Change } from "../../../../handover/change/change";
import { changeAdvice } from "../../../../handover/change/changeAdvice";
import type { ChangeState } from "../../../../handover/change/changeInHand";
import { PackChange } from "../../../../handover/change/packChange";
import { FRESH_MEMORY } from "../../../../lock/dialEncoder";
import { AdviceLine } from "../../../hand/AdviceLine";
import { boltOf } from "../../../hand/bolt";
import { againAct, newAct } from "../../../hand/handActs";
import { LockInHand } from "../../../hand/LockInHand";
import { StepStrip } from "../../../hand/StepStrip";
import { useWaitingSeconds } from "../../../hand/timePasses";
import { stateOf } from "../../../parts/page/ofChart";
import { ChangeActs } from "./ChangeActs";
import type { ChangeSession } from "./changeSession";
import { STAGE_OF, STAGES } from "./changeWords";

const KEY_WORDS = { out: "key out", in: "key in", turned: "key turned" } as const;
const KEY_STATES: readonly ChangeState[] = ["presentStands", "keyIn", "keyForced", "newStands", "keyBack"];

/** What follows the last number, where it is not the draw. */
function endOf(change: Change, state: ChangeState) {
  if (change.proof !== null) return undefined;
  if (change instanceof PackChange) {
    return { say: "change key", came: KEY_WORDS[change.keyed.key], isCurrent: KEY_STATES.includes(state) };
  }
  if (change.hand === change.attempt) return undefined;
  const { turn, travel } = change.profile.draw;
  return { say: `${turn} by ${travel}`, came: "ends the entry", isCurrent: false };
}

/** Whether numbers go to the changing index now. */
const isAtChangingIndex = (change: Change) => change instanceof PackChange && change.proof === null;

function Stages({ session, isOnce, state }: ChangeHandProps & { readonly state: ChangeState }) {
  const { change } = session;
  const stages = STAGES[change instanceof PackChange ? "key" : "dial"];
  // The mark goes by what the lock is at, which the hand alone does not tell.
  const current = isOnce && session.help !== "full" ? undefined : STAGE_OF[state];
  return (
    <ol className="stages list-inside list-decimal phone:gap-x-3" aria-label="Parts of the change">
      {stages.map((stage, k) => (
        <li key={stage} aria-current={k === current ? "step" : undefined}>
          {stage}
        </li>
      ))}
    </ol>
  );
}

/** What is said above the dial, and told to a screen reader when it changes. */
function Said({ session, advice }: { readonly session: ChangeSession; readonly advice: Advice | null }) {
  const waiting = useWaitingSeconds(session.change.attempt?.memory ?? FRESH_MEMORY);
  const note = waiting > 0 ? `Wrong-try delay: ${waiting} s left.` : null;
  const told = waiting > 0 ? "Wrong-try delay." : heardAdvice(advice);
  return (
    <>
      <AdviceLine advice={advice} note={note} onLeave={null} />
      <p className="visually-hidden" role="status" data-testid="state">
        {told}
      </p>
    </>
  );
}

interface TwoIndexDialProps extends ChangeHandProps {
  readonly advice: Advice | null;
  readonly dialing: DialingState;
}

/** The dial with its two indexes. */
function TwoIndexDial({ session, isOnce, advice, dialing }: TwoIndexDialProps) {
  const { change, help } = session;
  const { hand } = change;
  const atChanging = isAtChangingIndex(change);
  const isFull = help === "full";
  const acts = [
    againAct(() => session.again()),
    newAct("New numbers", "draws a new combination", () => session.drawAnother()),
  ];
  return (
    <LockInHand
      profile={change.profile}
      dial={session.dial}
      held={session}
      ringTurn={session.indexError}
      seen={session.seen}
      hasChangingIndex
      bolt={boltOf(dialing)}
      isCoupled={hand.isCoupled}
      dialed={hand}
      help={help}
      said={atChanging ? ["at the changing index"] : []}
      digits={isFull ? (isOnce ? "fading-without-switch" : "fading") : "none"}
      note={atChanging ? "changing index" : null}
      pointTo={isFull ? (advice?.turn ?? null) : null}
      acts={isOnce ? [] : acts}
      keysMore={["The buttons for key and door follow the dial."]}
    />
  );
}

interface ChangeHandProps {
  readonly session: ChangeSession;
  /** Whether there is this one try: nothing begins again, and nothing is told beyond help and what the hand feels. */
  readonly isOnce: boolean;
}

/** The dial, what is said above it, and all there is to do. */
export function ChangeHand({ session, isOnce }: ChangeHandProps) {
  const { change, help } = session;
  const state = useSelector(change.chart, stateOf);
  const dialing = useSelector(session.chart, stateOf);
  const advice = changeAdvice(change, dialing, help);
  return (
    <>
      <Stages session={session} isOnce={isOnce} state={state} />
      <StepStrip attempt={change.hand} state={dialing} help={help} end={endOf(change, state)} />
      <Said session={session} advice={advice} />
      <TwoIndexDial session={session} isOnce={isOnce} advice={advice} dialing={dialing} />
      <ChangeActs session={session} isOnce={isOnce} />
    </>
  );
}
