import { useMemo } from "react";
import type { GrowingAttempt } from "../../../school/wire/liveWire";
import { Button } from "../../parts/controls/Button";
import { takeFocus } from "../../parts/page/takeFocus";
import { TurnChart } from "../../pictures/turnChart/TurnChart";
import { ResultPanel } from "../../replay/ResultPanel";
import { usePlayback } from "../../replay/usePlayback";
import type { Asking } from "../asking/asking";
import type { BoardRow } from "./boardRows";
import { doingWords, whoWords } from "./boardWords";
import { type ShownAttempt, shownAttempt } from "./shownAttempt";
import { useAttempt } from "./useAttempt";

function played(told: GrowingAttempt, hasEnded: boolean): ShownAttempt | null {
  try {
    return shownAttempt(told, hasEnded);
  } catch {
    return null;
  }
}

interface ChartProps {
  readonly told: GrowingAttempt;
  readonly hasEnded: boolean;
}

/** The turn chart of an attempt as it grows; once it has ended, its replay and what it came to. */
function AttemptChart({ told, hasEnded }: ChartProps) {
  const shown = useMemo(() => played(told, hasEnded), [told, hasEnded]);
  const replay = usePlayback(() => shownAttempt(told, hasEnded).playback);
  if (shown === null)
    return (
      <p>This attempt cannot be shown: it is of a lock or a version that this page does not know. Reload this page.</p>
    );
  const { playback, faults, outcome } = shown;
  return (
    <>
      <TurnChart
        attempt={playback.whole}
        version={told.motion.length}
        faults={faults}
        ghost={null}
        recording={outcome === null ? null : playback.recording}
        playhead_ms={replay.playhead_ms}
        isPlaying={replay.isPlaying}
        onPlay={replay.play}
        onPause={replay.pause}
        onScrub={replay.scrub}
      />
      <ResultPanel attempt={playback.whole} outcome={outcome} faults={faults} estimate={null} />
    </>
  );
}

interface WatchedProps {
  readonly asking: Asking;
  readonly classId: string;
  readonly row: BoardRow;
  readonly onClose: () => void;
}

/** One bench closely: its attempt as it grows. */
export function WatchedBench({ asking, classId, row, onClose }: WatchedProps) {
  const { bench } = row;
  const shown = useAttempt(asking, classId, bench);
  return (
    <section className="card" aria-labelledby="watched">
      <div className="spread">
        <h3 id="watched" tabIndex={-1} ref={takeFocus}>
          {whoWords(row)} <small>{doingWords(bench)}</small>
        </h3>
        <Button onClick={onClose}>Close</Button>
      </div>
      {shown === null ? (
        <p>No motion to show: nothing was turned yet, or the apprentice chose to keep no motions.</p>
      ) : (
        <AttemptChart key={shown.attempt.id} told={shown.attempt} hasEnded={shown.hasEnded} />
      )}
    </section>
  );
}
