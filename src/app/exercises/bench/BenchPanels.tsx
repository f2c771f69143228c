import { startTransition, useEffect, useMemo, useState } from "react";
import type { Attempt } from "../../../dialing/attempt";
import type { TimedMotion } from "../../../dialing/motion";
import type { Graduations } from "../../../lock/dial";
import { faultsWithoutFigures } from "../../hand/faultsWithoutFigures";
import type { HubStrength } from "../../hand/hubReading";
import { Button } from "../../parts/controls/Button";
import { Select } from "../../parts/controls/Select";
import { fetchedLater } from "../../parts/page/fetchedLater";
import { whenIdle } from "../../parts/page/whenIdle";
import { Cutaway } from "../../pictures/cutaway/Cutaway";
import { TurnChart } from "../../pictures/turnChart/TurnChart";
import { estimateSentence } from "../../replay/estimateWords";
import { ResultPanel } from "../../replay/ResultPanel";
import type { PlaybackControls } from "../../replay/usePlayback";
import type { BenchSession } from "./benchSession";
import { EstimatePanel } from "./EstimatePanel";
import { GHOSTS, type Ghost } from "./ghosts";

/** Fetched where it has something to say. */
const FromFitting = fetchedLater(async () => (await import("../../hand/FromFitting")).FromFitting, null);

const GHOST_WORDS: Readonly<Record<Ghost, string>> = {
  none: "Compare with: nothing",
  ideal: "Compare with: perfect dialing",
  best: "Compare with: your best",
};

const NO_BEST = "Compare with: your best (none yet)";

interface BenchPanelsProps {
  readonly session: BenchSession;
  /** What the address asks for. */
  readonly query: URLSearchParams;
  readonly replay: PlaybackControls;
  /** The lock as it stands under the hand, or in the replay. */
  readonly lock: Attempt;
  /** The attempt that is shown. */
  readonly shown: Attempt;
  readonly ghost: readonly Graduations[] | null;
  readonly ghostKind: Ghost;
  readonly recording: TimedMotion | null;
  /** Whether everything stays hidden until an own estimate is given. */
  readonly isWithheld: boolean;
  /** How the digital reading stands in the hub: where it is gone, the cutaway does not give it either. */
  readonly reading: HubStrength;
  readonly onGhost: (ghost: Ghost) => void;
  readonly onShare: () => void;
}

/** The own estimate beside the truth; null where none was given. */
function ownEstimate({ estimate, outcome }: BenchSession): string | null {
  const worst = outcome?.worstStop ?? null;
  return typeof estimate === "number" && worst !== null ? estimateSentence(estimate, worst) : null;
}

/**
 * What the cutaway tells in figures of the lock under the hand: of a lock that stands as its attempt ended, or in a
 * replay, all.
 */
function figuresInside(
  { setup, outcome, lock, attempt }: BenchSession,
  replay: PlaybackControls,
  reading: HubStrength,
) {
  const isOver = outcome !== null && lock === attempt;
  if (replay.playback !== null || isOver) return "all";
  if (setup.help !== "full") return "none";
  return reading === "hidden" ? "errors" : "all";
}

/** Cutaway, turn chart, result, foot. */
const PANELS = 4;

/** How many panels are drawn yet: each by itself, when the browser has nothing else to do, since a hand may turn the dial. */
function usePanelsDrawn(): number {
  const [drawn, setDrawn] = useState(1);
  useEffect(() => {
    if (drawn === PANELS) return;
    return whenIdle(() => startTransition(() => setDrawn(drawn + 1)));
  }, [drawn]);
  return drawn;
}

/** What is seen of the attempt. */
function Insights({
  drawn,
  session,
  replay,
  lock,
  shown,
  ghost,
  recording,
  reading,
}: Omit<BenchPanelsProps, "ghostKind" | "onGhost" | "onShare" | "isWithheld"> & { readonly drawn: number }) {
  const { playback } = replay;
  const outcome = playback?.outcome ?? session.outcome;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the session is mutable; its version tells a change
  const faults = useMemo(() => playback?.outcome.faults ?? session.faults(), [playback, session, session.version]);
  // With the help Counts nothing tells how far, until the attempt has ended.
  const hasFigures = session.setup.help === "full" || outcome !== null;
  const named = useMemo(() => (hasFigures ? faults : faultsWithoutFigures(faults)), [faults, hasFigures]);
  return (
    <>
      <Cutaway attempt={lock} version={session.version} figures={figuresInside(session, replay, reading)} />
      {drawn > 1 && (
        <TurnChart
          attempt={playback?.whole ?? shown}
          version={session.version}
          faults={named}
          hasFigures={hasFigures}
          ghost={ghost}
          recording={recording}
          playhead_ms={replay.playhead_ms}
          isPlaying={replay.isPlaying}
          onPlay={replay.play}
          onPause={replay.pause}
          onScrub={replay.scrub}
        />
      )}
      {drawn > 2 && (
        <ResultPanel
          attempt={playback?.whole ?? shown}
          outcome={outcome}
          faults={named}
          hasFigures={hasFigures}
          estimate={playback === null ? ownEstimate(session) : null}
        />
      )}
    </>
  );
}

const HIDDEN = {
  silent: "Nothing is counted or shown until this attempt ends.",
  withheld: "Your stops are shown after the attempt, once you have entered how far off you were.",
};

/** What is in the place of all that is hidden. */
function Hidden({ session, isWithheld }: Pick<BenchPanelsProps, "session" | "isWithheld">) {
  if (isWithheld && session.outcome !== null) {
    return <EstimatePanel onAnswer={(answer) => session.giveEstimate(answer)} />;
  }
  const title = session.setup.help === "silent" ? "Silent" : "Hidden for now";
  return (
    <section className="panel" aria-label={title}>
      <h2>{title}</h2>
      <p className="text-soft">{isWithheld ? HIDDEN.withheld : HIDDEN.silent}</p>
    </section>
  );
}

/** Below all panels. */
function Foot({
  ghost,
  ghostKind,
  onGhost,
  onShare,
}: Pick<BenchPanelsProps, "ghost" | "ghostKind" | "onGhost" | "onShare">) {
  return (
    <footer className="workplace-foot flex phone:flex-wrap items-start gap-5 mt-auto px-edge py-4 text-fine leading-[1.4] text-soft">
      <Select
        className="flex-none text-small"
        aria-label="Compare on the turn chart"
        value={ghostKind}
        choices={GHOSTS.map((one) => [
          one,
          one === "best" && ghostKind === "best" && ghost === null ? NO_BEST : GHOST_WORDS[one],
        ])}
        onChoice={onGhost}
      />
      <Button className="flex-none text-small" aria-haspopup="dialog" onClick={onShare}>
        Share
      </Button>
      <p>
        A practice result is not a certificate. On a real door the maker's written instructions and local codes decide.
      </p>
    </footer>
  );
}

/** The panels beside the dial. In silent help they stay empty until the attempt has ended. */
export function BenchPanels({ ghostKind, onGhost, onShare, isWithheld, ...seen }: BenchPanelsProps) {
  const { session, query, replay } = seen;
  const isSilent = session.setup.help === "silent" && session.outcome === null;
  const isHidden = (isSilent || isWithheld) && replay.playback === null;
  const drawn = usePanelsDrawn();
  return (
    <div className="workplace-panels">
      {query.has("from") && <FromFitting query={query} />}
      {isHidden ? <Hidden session={session} isWithheld={isWithheld} /> : <Insights {...seen} drawn={drawn} />}
      {drawn === PANELS && <Foot ghost={seen.ghost} {...{ ghostKind, onGhost, onShare }} />}
    </div>
  );
}
