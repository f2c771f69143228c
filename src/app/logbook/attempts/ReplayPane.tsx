import { useMemo } from "react";
import { tellFaults, tellFaultsSoFar } from "../../../dialing/faultWords";
import { judgedFaults } from "../../../drill/marking/coarseStep";
import { parseCombination } from "../../../lock/combination";
import { worstStop } from "../../../progress/stops/worstStop";
import { isCoarselyTurned } from "../../../realdial/sources/isCoarselyTurned";
import { mayKeepMotion } from "../../../realdial/sources/sourceDescription";
import type { AttemptRecord } from "../../../records/attemptRecord";
import { profileOfAttempt } from "../../../records/csv/attemptsReplay";
import { motionOf } from "../../../store/attemptQueries";
import type { Logbook } from "../../../store/logbook";
import type { RecordedAttempt } from "../../../trace/recordedAttempt";
import { replay } from "../../../trace/replay";
import { useAsked } from "../../keeping/useLogbook";
import { Cutaway } from "../../pictures/cutaway/Cutaway";
import { TurnChart } from "../../pictures/turnChart/TurnChart";
import { estimateSentence } from "../../replay/estimateWords";
import { playbackOf } from "../../replay/playback";
import { ResultPanel } from "../../replay/ResultPanel";
import { usePlayback } from "../../replay/usePlayback";
import { doubtSentence } from "../../results/doubtWords";
import { turnedBySentence } from "../../results/sourceWords";
import { RecordNote } from "../notes/RecordNote";

/** The attempt as it was dialed; null where its motion is not kept. */
async function recordedOf(logbook: Logbook, attempt: AttemptRecord): Promise<RecordedAttempt | null> {
  const motion = await motionOf(logbook, attempt.id);
  if (motion === undefined || motion.positions.length === 0) return null;
  const profile = profileOfAttempt(attempt);
  return { profile, combination: parseCombination(profile, attempt.combination), ...motion };
}

interface ReplayProps {
  readonly attempt: AttemptRecord;
  readonly recorded: RecordedAttempt;
}

/** The whole attempt, played again on its own lock. */
function Replay({ attempt, recorded }: ReplayProps) {
  const { duration_ms, isUnfinished = false, estimate, stops, sources } = attempt;
  const whole = useMemo(() => replay(recorded), [recorded]);
  const recording = useMemo(() => playbackOf(recorded).recording, [recorded]);
  const faults = useMemo(
    () => judgedFaults(isUnfinished ? tellFaultsSoFar(whole) : tellFaults(whole), sources),
    [whole, isUnfinished, sources],
  );
  const worst = isCoarselyTurned(attempt) ? null : worstStop(stops);
  const { playback, playhead_ms, isPlaying, play, pause, scrub } = usePlayback(() => playbackOf(recorded));
  const shown = playback?.attempt ?? whole;
  const version = playhead_ms ?? -1;
  return (
    <>
      <TurnChart
        attempt={shown}
        version={version}
        faults={playback === null ? faults : []}
        ghost={null}
        recording={recording}
        playhead_ms={playhead_ms}
        isPlaying={isPlaying}
        onPlay={play}
        onPause={pause}
        onScrub={scrub}
      />
      <Cutaway attempt={shown} version={version} />
      {isUnfinished ? (
        <section aria-label="What happened">
          <h2>Unfinished</h2>
          <p>The page was closed before this attempt ended, or the attempt is still under way. It counts nowhere.</p>
        </section>
      ) : (
        <ResultPanel
          attempt={whole}
          outcome={{ opened: whole.opened, time_ms: duration_ms, faults, stood: whole, worstStop: worst }}
          faults={faults}
          estimate={estimate === undefined || worst === null ? null : estimateSentence(estimate, worst)}
        />
      )}
    </>
  );
}

function Motion({ logbook, attempt }: { readonly logbook: Logbook; readonly attempt: AttemptRecord }) {
  const { answer, problem } = useAsked(`motion ${attempt.id} ${attempt.duration_ms}`, async () => ({
    id: attempt.id,
    recorded: await recordedOf(logbook, attempt),
  }));
  if (problem !== null) return <p role="alert">This attempt cannot be replayed: {problem}</p>;
  if (answer?.id !== attempt.id) return <p className="py-5 text-soft">…</p>;
  if (answer.recorded === null)
    return (
      <p className="py-5 text-soft">
        {mayKeepMotion(attempt)
          ? "The motion of this attempt was not recorded here."
          : "No motion of this attempt was kept, by choice: it cannot be replayed."}
      </p>
    );
  return <Replay key={attempt.id} attempt={attempt} recorded={answer.recorded} />;
}

interface ReplayPaneProps {
  readonly logbook: Logbook;
  readonly attempt: AttemptRecord | null;
  readonly onChanged: (attempt: AttemptRecord) => void;
}

/** One attempt, looked at again, and what is noted of it. */
export function ReplayPane({ logbook, attempt, onChanged }: ReplayPaneProps) {
  if (attempt === null) return <p className="py-5 text-soft">Choose an attempt to replay it.</p>;
  return (
    <>
      <Motion logbook={logbook} attempt={attempt} />
      {attempt.sources !== undefined && <p className="text-soft">{turnedBySentence(attempt)}</p>}
      <p className="empty:hidden">{doubtSentence(attempt)}</p>
      {attempt.isUnfinished !== true && (
        <RecordNote logbook={logbook} kind="attempts" record={attempt} onChanged={onChanged} />
      )}
    </>
  );
}
