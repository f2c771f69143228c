import { useState } from "react";
import { Sheet } from "../../shell/Sheet";
import { ChangeControls, ChooseNumbers } from "./ChangePanel";
import { DoorHand } from "./DoorHand";
import type { HandoverSession } from "./handoverSession";
import { RecordSheet } from "./RecordSheet";
import { RingPanel } from "./RingPanel";
import { RunCautions } from "./RunCautions";
import { ACT_GROUPS } from "./runActs";
import { ScenePicture } from "./ScenePicture";

interface ActsProps {
  readonly session: HandoverSession;
  readonly onForm: (form: "numbers" | "record") => void;
  /** Looks back on the run; null where there is this one try, and nothing is told of it. */
  readonly onLookBack: (() => void) | null;
}

/** Everything one may do next, at any time. */
function Acts({ session, onForm, onLookBack }: ActsProps) {
  return (
    <div className="run-acts">
      {ACT_GROUPS.map(({ title, acts, cautions }) => (
        <fieldset key={title}>
          <legend>{title}</legend>
          {acts
            .filter(({ isOffered }) => isOffered?.(session) ?? true)
            .map(({ label, does }) => (
              <button key={label} type="button" className="button" onClick={() => does(session, performance.now())}>
                {label}
              </button>
            ))}
          {title === "Lock" && (
            <button type="button" className="button" onClick={() => onForm("numbers")}>
              Change the combination
            </button>
          )}
          <RunCautions ids={cautions} />
        </fieldset>
      ))}
      <fieldset>
        <legend>Paper</legend>
        <button type="button" className="button" onClick={() => onForm("record")}>
          Write the record
        </button>
        <button
          type="button"
          className="button"
          onClick={() => {
            if (session.act({ type: "duty.signed" }, performance.now()) && session.run.isHandedOver) onLookBack?.();
          }}
        >
          Sign the door off
        </button>
        {onLookBack !== null && (
          <button type="button" className="button" onClick={onLookBack}>
            Look back
          </button>
        )}
        <RunCautions ids={["record"]} />
      </fieldset>
    </div>
  );
}

/** The door as it stands, and everything one may do about it. */
export function RunDoor({ session, onLookBack }: Omit<ActsProps, "onForm">) {
  const [form, setForm] = useState<"numbers" | "record" | null>(null);
  const close = () => setForm(null);
  return (
    <div className="run-left">
      <ScenePicture situation={session.run.situation} isOnce={onLookBack === null} />
      <Acts session={session} onForm={setForm} onLookBack={onLookBack} />
      <Sheet title="Change the combination" isOpen={form === "numbers"} onClose={close}>
        <ChooseNumbers session={session} onDone={close} />
      </Sheet>
      <RecordSheet session={session} isOpen={form === "record"} onClose={close} />
    </div>
  );
}

/** The lock under the hand: its dial, its ring, or a change of its combination. */
export function RunHand({ session }: { readonly session: HandoverSession }) {
  return (
    <div className="run-right">
      {session.activity === "ring" ? (
        <RingPanel session={session} />
      ) : (
        <>
          <ChangeControls session={session} />
          <DoorHand session={session} />
        </>
      )}
    </div>
  );
}
