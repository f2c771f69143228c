import { useEffect, useRef, useState } from "react";
import { focusDial } from "../../../hand/dial/focusDial";
import { Dialog } from "../../../parts/controls/Dialog";
import { Acts, isFitting, NextLine } from "./Acts";
import { ChangeControls, ChooseNumbers } from "./ChangePanel";
import { DoorHand } from "./DoorHand";
import { FitHand, FitParts } from "./FitWork";
import { RecordSheet } from "./RecordSheet";
import { RingHand, RingPanel } from "./RingPanel";
import { ScenePicture } from "./ScenePicture";
import { StateStrip } from "./StateStrip";
import { isStanding } from "./session/danger";
import type { Activity } from "./session/doorWork";
import type { HandoverSession } from "./session/handoverSession";
import { showDial } from "./session/showDial";
import { ToldLine } from "./ToldLine";
import "./run.css";

const PANEL_NAMES = { ring: "Ring and zero", change: "Change by hand" } as const;

interface WorkProps {
  readonly session: HandoverSession;
  /** Whether there is this one try, and what follows from an act is left to its end. */
  readonly isOnce: boolean;
}

/** What is under the hand: parts, ring or dial. */
function HandWork({ session, isOnce }: WorkProps) {
  const { tray, activity } = session;
  if (tray !== null && isFitting(session)) return <FitHand tray={tray} isOnce={isOnce} />;
  return activity === "ring" ? <RingHand session={session} /> : <DoorHand session={session} />;
}

/** Work that has more to it than dialing. It takes the focus as it comes, and gives it to the dial as it goes. */
function WorkPanel({ session, isOnce }: WorkProps) {
  const { activity } = session;
  const panel = useRef<HTMLElement>(null);
  const shown = useRef<Activity>(activity);
  useEffect(() => {
    if (shown.current === activity) return;
    shown.current = activity;
    // After a form that closes has given its focus back.
    queueMicrotask(() => {
      if (activity === "dial") focusDial();
      panel.current?.focus({ preventScroll: true });
      panel.current?.scrollIntoView({ block: "nearest" });
      // Where there is no room for both, the dial goes before what is done besides.
      showDial();
    });
  }, [activity]);
  if (activity === "dial") return null;
  return (
    <section
      className="run-panel order-1 notice flex flex-wrap gap-4 p-4 border-hair border-l-accent"
      aria-label={PANEL_NAMES[activity]}
      ref={panel}
      tabIndex={-1}
    >
      {activity === "ring" ? <RingPanel session={session} /> : <ChangeControls session={session} isOnce={isOnce} />}
    </section>
  );
}

interface RunWorkProps extends WorkProps {
  /** Looks back on the run; null where nothing is told of it. */
  readonly onLookBack: (() => void) | null;
}

/**
 * The lock under the hand, what happened last, the door as it stands, and everything one may do about it.
 *
 * Where there is room the dial is beside the rest. Else the state of the door stays in view in two lines, and what
 * happened last and the acts, a group at a time, follow the dial. What is told never comes above the dial: its length must
 * not move what the hand holds.
 */
export function RunWork({ session, isOnce, onLookBack }: RunWorkProps) {
  const [form, setForm] = useState<"numbers" | "record" | null>(null);
  const close = () => setForm(null);
  const { danger, tray } = session;
  const { situation, steps } = session.run;
  const sign = isOnce ? "" : (danger?.sign ?? "");
  return (
    <div className="run-place w-full print:hidden">
      <div className="run flex flex-col gap-4">
        <StateStrip situation={situation} sign={sign} />
        {/* On a phone parts come before checks, which need them on the door. */}
        <div className={`run-hand grid gap-4 justify-items-center ${isFitting(session) ? "phone:contents" : ""}`}>
          <HandWork session={session} isOnce={isOnce} />
        </div>
        <div className="run-side contents">
          <ToldLine
            told={session.told}
            danger={isStanding(danger, session.run, session.told) ? danger : null}
            isOnce={isOnce}
          />
          {!isOnce && isFitting(session) && <NextLine session={session} />}
          {tray !== null && isFitting(session) && <FitParts tray={tray} takesFocus={isOnce && steps.length === 0} />}
          <WorkPanel session={session} isOnce={isOnce} />
          <ScenePicture situation={situation} sign={sign} />
          <Acts session={session} onForm={setForm} onLookBack={onLookBack} />
        </div>
      </div>
      <Dialog title="Change the combination" isOpen={form === "numbers"} onClose={close}>
        <ChooseNumbers session={session} onDone={close} />
      </Dialog>
      <RecordSheet session={session} isOpen={form === "record"} onClose={close} />
    </div>
  );
}
