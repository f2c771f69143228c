import { useMemo } from "react";
import type { Attempt } from "../../dialing/attempt";
import type { Graduations } from "../../lock/dial";
import { Cutaway } from "../cutaway/Cutaway";
import { TurnChart } from "../turnChart/TurnChart";
import type { Recording } from "./attemptRecorder";
import type { BenchSession } from "./benchSession";
import { EstimatePanel } from "./EstimatePanel";
import { estimateSentence } from "./estimateWords";
import { GHOSTS, type Ghost } from "./ghosts";
import { ResultPanel } from "./ResultPanel";
import type { PlaybackControls } from "./usePlayback";

const GHOST_WORDS: Readonly<Record<Ghost, string>> = {
  none: "no ghost",
  ideal: "ghost: a perfect hand",
  best: "ghost: your best",
};

const NO_BEST = "ghost: your best (none yet)";

interface BenchPanelsProps {
  readonly session: BenchSession;
  readonly replay: PlaybackControls;
  /** The lock as it stands under the hand, or in the replay. */
  readonly lock: Attempt;
  /** The attempt that is told about. */
  readonly shown: Attempt;
  readonly ghost: readonly Graduations[] | null;
  readonly ghostKind: Ghost;
  readonly recording: Recording | null;
  /** Whether everything stays hidden until an own estimate is given. */
  readonly isWithheld: boolean;
  readonly onGhost: (ghost: Ghost) => void;
  readonly onShare: () => void;
}

/** The own estimate beside the truth; null where none was given. */
function ownEstimate({ estimate, outcome }: BenchSession): string | null {
  const worst = outcome?.worstStop ?? null;
  return typeof estimate === "number" && worst !== null ? estimateSentence(estimate, worst) : null;
}

/** What is seen of the attempt. */
function Insights({
  session,
  replay,
  lock,
  shown,
  ghost,
  recording,
}: Omit<BenchPanelsProps, "ghostKind" | "onGhost" | "onShare" | "isWithheld">) {
  const { playback } = replay;
  const outcome = playback?.outcome ?? session.outcome;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the session is mutable; its version tells a change
  const faults = useMemo(() => playback?.outcome.faults ?? session.faults(), [playback, session, session.version]);
  return (
    <>
      <Cutaway attempt={lock} version={session.version} />
      <TurnChart
        attempt={playback?.whole ?? shown}
        version={session.version}
        faults={faults}
        ghost={ghost}
        recording={recording}
        playhead_ms={replay.playhead_ms}
        isPlaying={replay.isPlaying}
        onPlay={replay.play}
        onPause={replay.pause}
        onScrub={replay.scrub}
      />
      <ResultPanel
        attempt={playback?.whole ?? shown}
        outcome={outcome}
        faults={faults}
        estimate={playback === null ? ownEstimate(session) : null}
      />
    </>
  );
}

const HIDDEN = {
  silent: "Nothing is counted or shown until this attempt has ended.",
  withheld: "Your stops are not shown until the attempt has ended and you have said how far off you were.",
};

/** What stands in the place of all that is hidden. */
function Hidden({ session, isWithheld }: Pick<BenchPanelsProps, "session" | "isWithheld">) {
  if (isWithheld && session.outcome !== null) {
    return <EstimatePanel onAnswer={(answer) => session.giveEstimate(answer)} />;
  }
  const title = session.setup.help === "silent" ? "Silent" : "Hidden for now";
  return (
    <section className="panel" aria-label={title}>
      <h2>{title}</h2>
      <p className="bench-silent">{isWithheld ? HIDDEN.withheld : HIDDEN.silent}</p>
    </section>
  );
}

/** The panels beside the dial. In silent help they stay empty until the attempt has ended. */
export function BenchPanels({ ghostKind, onGhost, onShare, isWithheld, ...seen }: BenchPanelsProps) {
  const { session, replay } = seen;
  const isSilent = session.setup.help === "silent" && session.outcome === null;
  const isHidden = (isSilent || isWithheld) && replay.playback === null;
  return (
    <div className="workplace-panels">
      {isHidden ? <Hidden session={session} isWithheld={isWithheld} /> : <Insights {...seen} />}
      <footer className="workplace-foot">
        <select
          className="field"
          aria-label="Ghost on the turn chart"
          value={ghostKind}
          onChange={(event) => onGhost(GHOSTS.find((one) => one === event.currentTarget.value) ?? "none")}
        >
          {GHOSTS.map((one) => (
            <option key={one} value={one}>
              {one === "best" && ghostKind === "best" && seen.ghost === null ? NO_BEST : GHOST_WORDS[one]}
            </option>
          ))}
        </select>
        <button type="button" className="button" aria-haspopup="dialog" onClick={onShare}>
          Share
        </button>
        <p>
          A practice result is not a certificate. On a real door the maker's written instructions and local codes
          decide.
        </p>
      </footer>
    </div>
  );
}
