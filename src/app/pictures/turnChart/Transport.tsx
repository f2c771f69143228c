import type { TimedMotion } from "../../../dialing/motion";
import type { Milliseconds } from "../../../lock/dial";
import { Button } from "../../parts/controls/Button";

interface Props {
  readonly recording: TimedMotion;
  readonly playhead_ms: Milliseconds | null;
  /** Reading at the playhead, in words. */
  readonly reading: string;
  readonly isPlaying: boolean;
  readonly onPlay: () => void;
  readonly onPause: () => void;
  readonly onScrub: (time_ms: Milliseconds) => void;
}

/** "12.4", seconds. */
const secondsText = (time_ms: Milliseconds) => (time_ms / 1000).toFixed(1);

/** Step of the time slider, milliseconds. */
const STEP: Milliseconds = 100;

/** Play, pause, and a slider to move through the replay. */
export function Transport(props: Props) {
  const { recording, playhead_ms, reading, isPlaying, onScrub } = props;
  const first = recording.times_ms[0] ?? 0;
  const last = recording.times_ms.at(-1) ?? first;
  const time = (playhead_ms ?? first) - first;
  // The slider only knows whole steps; its end must not fall short of the recording's.
  const max = Math.max(STEP, Math.ceil((last - first) / STEP) * STEP);
  return (
    <div className="flex items-center gap-4 mt-2">
      <Button
        className="slim inline-flex items-center gap-2 min-w-[84px] text-small"
        onClick={isPlaying ? props.onPause : props.onPlay}
      >
        <svg className="fill-current" viewBox="0 0 12 12" width="11" height="11" aria-hidden="true">
          <path d={isPlaying ? "M2 1h3v10H2zM7 1h3v10H7z" : "M2 0.5L11 6L2 11.5z"} />
        </svg>
        {isPlaying ? "Pause" : "Play"}
      </Button>
      <input
        type="range"
        className="flex-1 min-w-0 h-[30px] m-0"
        aria-label="Time in the replay"
        aria-valuetext={`${secondsText(time)} seconds, reading ${reading}`}
        min={0}
        max={max}
        step={1}
        value={time}
        onChange={(event) => onScrub(Math.min(last, first + event.currentTarget.valueAsNumber))}
      />
      <span className="turn-chart-time text-fine text-soft whitespace-nowrap" aria-hidden="true">
        <b className="font-semibold text-ink">{secondsText(time)}</b> of {secondsText(last - first)} s
      </span>
    </div>
  );
}
