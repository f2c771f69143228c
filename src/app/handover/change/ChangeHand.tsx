import type { KeyboardEvent } from "react";
import { type ChangeState, changeAdvice } from "../../../handover/change/changeAdvice";
import { PackChange } from "../../../handover/change/packChange";
import type { Change } from "../../../handover/change/tellChange";
import { AdviceLine } from "../../bench/AdviceLine";
import { StepStrip } from "../../bench/StepStrip";
import { dialReadingText, lastTurn, spokenDial } from "../../bench/spoken";
import { TurnButtons } from "../../bench/TurnButtons";
import { Dial } from "../../dial/Dial";
import { focusDial } from "../../dial/focusDial";
import { plainKey } from "../../dial/plainKey";
import { useTurn } from "../../zeroing/useZeroing";
import type { ChangeSession } from "./changeSession";
import { STAGE_OF, STAGES } from "./changeWords";
import { KeyActs } from "./KeyActs";

const KEYS_HELP =
  "Arrow keys turn the way they point, by one; hold them to keep turning, with Shift fast. Comma and period nudge by a tenth. Page Up and Page Down turn by ten, with Shift by a whole turn. R starts again, N draws a new combination. The buttons for key and door follow the dial.";

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
  return { say: `${turn} by ${travel}`, came: "ends the dialing", isCurrent: false };
}

/** Whether numbers go to the changing index now. */
const isAtChangingIndex = (change: Change) => change instanceof PackChange && change.proof === null;

function Stages({ session }: { readonly session: ChangeSession }) {
  const { change, state } = session;
  const stages = STAGES[change instanceof PackChange ? "key" : "dial"];
  return (
    <ol className="change-stages" aria-label="Parts of the change">
      {stages.map((stage, k) => (
        <li key={stage} aria-current={k === STAGE_OF[state] ? "step" : undefined}>
          {stage}
        </li>
      ))}
    </ol>
  );
}

/** The dial with its two indexes, what is said above it, and all there is to do. */
export function ChangeHand({ session }: { readonly session: ChangeSession }) {
  const { change, state, dialing, help } = session;
  const { hand, profile } = change;
  const onTurn = useTurn(session);
  const advice = changeAdvice({ change, state, dialing }, help);
  const atChanging = isAtChangingIndex(change);
  const turn = lastTurn(hand);
  const note = atChanging ? "changing index" : turn === null ? "at rest" : `turning ${turn}`;
  const restart = (isNew: boolean) => (isNew ? session.drawAnother() : session.again());
  const onOtherKey = (event: KeyboardEvent) => {
    const key = plainKey(event);
    if (key === "r" || key === "n") restart(key === "n");
  };
  const press = (isNew: boolean) => {
    restart(isNew);
    focusDial();
  };
  return (
    <>
      <Stages session={session} />
      <StepStrip attempt={hand} state={dialing} help={help} end={endOf(change, state)} />
      <AdviceLine advice={advice} note={null} onLeave={null} />
      <div className="workplace-dial">
        <Dial
          position={change.dial}
          graduations={profile.graduations}
          numbersIncrease={profile.numbersIncrease}
          spoken={`${spokenDial(hand, help)}${atChanging ? ", at the changing index" : ""}`}
          pointTo={help === "full" ? (advice?.turn ?? null) : null}
          hub={help === "full" ? { reading: dialReadingText(hand), note } : null}
          describedBy="change-keys"
          changingIndex={profile.kind === "wheel-pack" ? profile.changing?.index : undefined}
          onTurn={onTurn}
          onOtherKey={onOtherKey}
        />
        <p id="change-keys" className="visually-hidden">
          {KEYS_HELP}
        </p>
        <button type="button" className="button workplace-again" aria-keyshortcuts="R" onClick={() => press(false)}>
          Again <kbd>R</kbd>
        </button>
        <button type="button" className="button workplace-new" aria-keyshortcuts="N" onClick={() => press(true)}>
          New numbers <kbd>N</kbd>
        </button>
      </div>
      <TurnButtons perTurn={profile.graduations} onTurn={onTurn} />
      <KeyActs session={session} />
    </>
  );
}
