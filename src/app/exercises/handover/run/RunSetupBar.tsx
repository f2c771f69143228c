import { useState } from "react";
import { SHIPPED_PROFILES } from "../../../../lock/shippedProfiles";
import { countText } from "../../../../wording/amountWords";
import { LockChoice } from "../../../hand/LockChoice";
import { Button } from "../../../parts/controls/Button";
import { Dialog } from "../../../parts/controls/Dialog";
import type { RunSetup } from "./session/doorWork";
import type { HandoverSession } from "./session/handoverSession";

interface RunSetupBarProps {
  readonly session: HandoverSession;
  readonly onStart: (setup: RunSetup) => void;
  readonly newSeed: () => number;
}

interface AskProps {
  readonly steps: number;
  readonly isOpen: boolean;
  readonly onDiscard: () => void;
  readonly onClose: () => void;
}

/** Asks before a handover that has begun is given up for another. */
function AskDiscard({ steps, isOpen, onDiscard, onClose }: AskProps) {
  return (
    <Dialog title="Discard this handover?" isOpen={isOpen} onClose={onClose} closeWord="Keep it">
      <p>
        {steps === 0 ? "The work you have under way is" : `Your ${countText(steps, "step")} so far are`} lost. To keep
        them, choose “Keep it”, then “Look back” and “Save the handover”.
      </p>
      <Button className="primary" onClick={onDiscard}>
        Discard and start
      </Button>
    </Dialog>
  );
}

/** Which lock and which door the handover is at, and ways to begin another. */
export function RunSetupBar({ session, onStart, newSeed }: RunSetupBarProps) {
  // Another door has the help that was chosen at this one.
  const setup = { ...session.setup, help: session.tray?.help ?? session.setup.help };
  const { profile, seed, isHandsOff, isToFit = false } = setup;
  const { door, lock } = session.recorded.scene;
  const [asked, setAsked] = useState<RunSetup | null>(null);
  const begin = (setup: RunSetup) => {
    if (session.isBegun && !session.run.isHandedOver) setAsked(setup);
    else onStart(setup);
  };
  return (
    <div className="setup justify-start print:hidden">
      <LockChoice
        className="phone:max-w-full"
        locks={SHIPPED_PROFILES}
        lock={profile}
        onLock={(chosen) => begin({ ...setup, profile: chosen })}
      />
      <Button onClick={() => begin(setup)}>Start again</Button>
      <Button onClick={() => begin({ ...setup, seed: newSeed() })}>Another door</Button>
      <Button aria-pressed={isHandsOff} onClick={() => begin({ ...setup, isHandsOff: !isHandsOff })}>
        A simulated hand dials
      </Button>
      <Button aria-pressed={isToFit} onClick={() => begin({ ...setup, isToFit: !isToFit })}>
        Fit the lock first
      </Button>
      <small>
        {door}, {lock}, door number {seed}
      </small>
      <AskDiscard
        steps={session.run.steps.length}
        isOpen={asked !== null}
        onClose={() => setAsked(null)}
        onDiscard={() => {
          setAsked(null);
          if (asked !== null) onStart(asked);
        }}
      />
    </div>
  );
}
