import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import { writeAttemptLine } from "../../../trace/recordedAttempt";
import { playbackOf } from "../../replay/playback";
import type { PlaybackControls } from "../../replay/usePlayback";
import type { BenchSession } from "./benchSession";
import { CombinationSheet } from "./CombinationSheet";
import { MoreSheet } from "./MoreSheet";
import { ShareSheet } from "./ShareSheet";

/** A dialog of the bench. */
export type SheetName = "combination" | "more" | "share";

/** The shown attempt as a line of the replay format, or null before the first motion and where no motion is kept. */
function attemptLine({ attempt, recording, turnedBy }: BenchSession): string | null {
  if (recording.positions.length === 0 || !turnedBy.mayKeepMotion) return null;
  const isShipped = SHIPPED_PROFILES.includes(attempt.profile);
  const recorded = { profile: attempt.profile, combination: attempt.combination, ...recording };
  return writeAttemptLine(recorded, isShipped ? attempt.profile.id : attempt.profile);
}

interface BenchSheetsProps {
  readonly session: BenchSession;
  readonly replay: PlaybackControls;
  /** The one that is open. */
  readonly sheet: SheetName;
  readonly onClose: () => void;
  readonly asksEstimate: boolean;
  readonly onAsksEstimate: (asks: boolean) => void;
  /** What keys and mouse do, a sentence each. */
  readonly keys: readonly string[];
}

/** The dialogs of the bench. */
export function BenchSheets({ session, replay, sheet, onClose, keys, ...estimate }: BenchSheetsProps) {
  const { setup } = session;
  return (
    <>
      <CombinationSheet
        setup={setup}
        isOpen={sheet === "combination"}
        onClose={onClose}
        onTake={(source) => session.takeLock(setup.profile, source)}
        onOwn={(combination) => session.change({ ...setup, source: "own", combination })}
      />
      <MoreSheet
        isOpen={sheet === "more"}
        onClose={onClose}
        dial={setup.dial}
        onDial={(dial) => {
          replay.leave();
          session.change({ ...setup, dial });
        }}
        keys={keys}
        {...estimate}
      />
      <ShareSheet
        isOpen={sheet === "share"}
        onClose={onClose}
        line={sheet === "share" ? attemptLine(session) : null}
        isMotionKept={session.turnedBy.mayKeepMotion}
        onLoad={(recorded) => {
          // Set up first: a recording that fits no lock is told before anything changes.
          const brought = playbackOf(recorded);
          const { profile, combination } = recorded;
          session.change({ ...setup, profile, source: "own", combination });
          replay.enter(brought);
        }}
      />
    </>
  );
}
