import type { Advice } from "../../../../dialing/advice";
import { type ChangeState, changeAdvice } from "../../../../handover/change/changeAdvice";
import { PackChange } from "../../../../handover/change/packChange";
import type { Change } from "../../../../handover/change/tellChange";
import { FRESH_MEMORY } from "../../../../lock/dialEncoder";
import { AdviceLine } from "../../../hand/AdviceLine";
import { Dial } from "../../../hand/dial/Dial";
import { focusDial } from "../../../hand/dial/focusDial";
import { plainKey } from "../../../hand/dial/plainKey";
import { StepStrip } from "../../../hand/StepStrip";
import { dialReadingText, lastTurn, spokenDial } from "../../../hand/spoken";
import { TurnButtons } from "../../../hand/TurnButtons";
import { withoutSizes } from "../../bench/Announcer";
import { useWaitingSeconds } from "../../bench/useBench";
import { useTurn } from "../../zeroing/useZeroing";
import { ChangeActs } from "./ChangeActs";
import type { ChangeSession } from "./changeSession";
import { STAGE_OF, STAGES } from "./changeWords";

const KEYS_HELP =
  "Arrow keys turn the way they point, by one; hold them to keep turning, with Shift fast. Comma and period nudge by a tenth. Page Up and Page Down turn by ten, with Shift by a whole turn. The buttons for key and door follow the dial.";
const AGAIN_HELP = " R starts again, N draws a new combination.";

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

function Stages({ session, isOnce }: ChangeHandProps) {
  const { change, state } = session;
  const stages = STAGES[change instanceof PackChange ? "key" : "dial"];
  // The mark goes by what the lock is at, which the hand alone does not tell.
  const current = isOnce && session.help !== "full" ? undefined : STAGE_OF[state];
  return (
    <ol className="stages change-stages" aria-label="Parts of the change">
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
  const told = waiting > 0 ? "Wrong-try delay." : withoutSizes(advice?.say ?? "");
  return (
    <>
      <AdviceLine advice={advice} note={note} onLeave={null} />
      <p className="visually-hidden" role="status" data-testid="state">
        {told}
      </p>
    </>
  );
}

/** The dial with its two indexes. */
function TwoIndexDial({ session, isOnce, advice }: ChangeHandProps & { readonly advice: Advice | null }) {
  const { change, help } = session;
  const { hand, profile } = change;
  const onTurn = useTurn(session);
  const atChanging = isAtChangingIndex(change);
  const turn = lastTurn(hand);
  const note = atChanging ? "changing index" : turn === null ? "at rest" : `turning ${turn}`;
  const isFull = help === "full";
  return (
    <Dial
      position={change.dial}
      graduations={profile.graduations}
      numbersIncrease={profile.numbersIncrease}
      spoken={`${spokenDial(hand, help)}${atChanging ? ", at the changing index" : ""}`}
      pointTo={isFull && advice !== null ? advice.turn : null}
      hub={isFull ? { reading: dialReadingText(hand), note } : null}
      describedBy="change-keys"
      changingIndex={profile.kind === "wheel-pack" ? profile.changing?.index : undefined}
      onTurn={onTurn}
      onOtherKey={(event) => {
        if (isOnce) return;
        const key = plainKey(event);
        if (key === "r") session.again();
        if (key === "n") session.drawAnother();
      }}
    />
  );
}

function AgainButtons({ session }: { readonly session: ChangeSession }) {
  const press = (isNew: boolean) => {
    if (isNew) session.drawAnother();
    else session.again();
    focusDial();
  };
  return (
    <>
      <button type="button" className="button workplace-again" aria-keyshortcuts="R" onClick={() => press(false)}>
        Again <kbd>R</kbd>
      </button>
      <button type="button" className="button workplace-new" aria-keyshortcuts="N" onClick={() => press(true)}>
        New numbers <kbd>N</kbd>
      </button>
    </>
  );
}

interface ChangeHandProps {
  readonly session: ChangeSession;
  /** Whether there is this one try: nothing begins again, and nothing is told beyond help and what the hand feels. */
  readonly isOnce: boolean;
}

/** The dial, what is said above it, and all there is to do. */
export function ChangeHand({ session, isOnce }: ChangeHandProps) {
  const { change, state, dialing, help } = session;
  const { hand, profile } = change;
  const onTurn = useTurn(session);
  const advice = changeAdvice({ change, state, dialing }, help);
  return (
    <>
      <Stages session={session} isOnce={isOnce} />
      <StepStrip attempt={hand} state={dialing} help={help} end={endOf(change, state)} />
      <Said session={session} advice={advice} />
      <div className="workplace-dial">
        <TwoIndexDial session={session} isOnce={isOnce} advice={advice} />
        <p id="change-keys" className="visually-hidden">
          {KEYS_HELP}
          {!isOnce && AGAIN_HELP}
        </p>
        {!isOnce && <AgainButtons session={session} />}
      </div>
      <TurnButtons perTurn={profile.graduations} onTurn={onTurn} />
      <ChangeActs session={session} isOnce={isOnce} />
    </>
  );
}
