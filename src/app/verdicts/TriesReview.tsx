import { useMemo, useState } from "react";
import { tellFaults } from "../../dialing/faultWords";
import type { Motion, TimedMotion } from "../../dialing/motion";
import type { DialingTry, TryResult } from "../../drill/marking/tryResult";
import { stationProfile } from "../../drill/sheet/stationProfile";
import type { SittingRecord } from "../../records/sitting/sittingRecord";
import { Button } from "../parts/controls/Button";
import { TurnChart } from "../pictures/turnChart/TurnChart";
import { Playback } from "../replay/playback";
import { usePlayback } from "../replay/usePlayback";
import { ReadingsReview } from "./ReadingsReview";
import { type TryRow, tryRow } from "./sittingWords";

const recordingOf = ({ start, positions, times_ms }: Motion): TimedMotion => ({
  start: start ?? { dial: positions[0] ?? 0 },
  positions: [...positions],
  times_ms: [...(times_ms ?? positions.map((_, k) => 400 * k))],
});

interface ReplayProps {
  readonly record: SittingRecord;
  readonly one: DialingTry;
  readonly motion: Motion;
}

/** A try that is known to have a lock: played to its end, and how to play it anew. */
function replayOf({ record, one, motion }: ReplayProps) {
  const profile = stationProfile(record.sheet.stations[one.station] ?? { profile: "" });
  const fresh = () => new Playback(profile, one.combination, recordingOf(motion));
  const ended = fresh();
  ended.goTo(ended.duration_ms);
  return { fresh, ended: ended.attempt, faults: tellFaults(ended.attempt), recording: ended.recording };
}

/** One try of a sitting, played again on its own lock. */
function TryReplay({ record, one, motion }: ReplayProps) {
  const made = useMemo(() => replayOf({ record, one, motion }), [record, one, motion]);
  const replay = usePlayback(made.fresh);
  return (
    <div className="[&_.turn-chart]:h-[320px] [&_.turn-chart]:my-4">
      <TurnChart
        attempt={replay.playback?.attempt ?? made.ended}
        version={Math.round(replay.playhead_ms ?? 0)}
        faults={replay.playback === null ? made.faults : []}
        ghost={null}
        recording={made.recording}
        playhead_ms={replay.playhead_ms}
        isPlaying={replay.isPlaying}
        onPlay={replay.play}
        onPause={replay.pause}
        onScrub={replay.scrub}
      />
      <ul className="grid gap-2">
        {made.faults.map(({ code, number, message }) => (
          <li key={`${code}-${number}`}>{message}</li>
        ))}
      </ul>
    </div>
  );
}

interface RowProps {
  readonly index: number;
  readonly row: TryRow;
  readonly isShown: boolean;
  /** What of the try can be looked at; null where nothing is kept. */
  readonly review: "Replay" | "Stops" | null;
  readonly onReview: () => void;
}

function Row({ index, row, isShown, review, onReview }: RowProps) {
  return (
    <tr>
      <th scope="row">{index + 1}</th>
      <td data-head="Station">{row.place}</td>
      <td data-head="Outcome">{row.outcome}</td>
      <td data-head="Measured">
        {row.stops}
        {row.turnedWith !== null && <small className="block text-soft">{row.turnedWith}</small>}
      </td>
      <td data-head="Faults">{row.faults}</td>
      <td data-head="Time">{row.time}</td>
      <td className="print:hidden">
        {review !== null && (
          <Button aria-pressed={isShown} onClick={onReview}>
            {review}
            <span className="visually-hidden"> try {index + 1}</span>
          </Button>
        )}
      </td>
    </tr>
  );
}

interface TriesReviewProps {
  readonly record: SittingRecord;
  /** Of each try; null where none is kept. */
  readonly motions: readonly (Motion | null)[];
}

const reviewOf = (one: TryResult, motion: Motion | null) => {
  if (one.isBrokenOff) return null;
  if (one.kind === "zeroing") return (one.readings ?? []).length > 0 ? "Stops" : null;
  return motion === null ? null : "Replay";
};

/** Every try as a row, and one of them again: its motion, or its readings. */
export function TriesReview({ record, motions }: TriesReviewProps) {
  const [shown, setShown] = useState<number | null>(null);
  if (record.tries.length === 0) return null;
  const one = record.tries[shown ?? -1];
  const motion = motions[shown ?? -1] ?? null;
  return (
    <section aria-label="Tries">
      <h2 className="mb-3">
        Tries <small>stop errors by number, zeros and sizes in graduations; plus ran past</small>
      </h2>
      <div className="stacks overflow-x-auto">
        <table>
          <thead>
            <tr>
              {["Try", "Station", "Outcome", "Measured", "Faults", "Time"].map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
              <th scope="col" className="print:hidden">
                Again
              </th>
            </tr>
          </thead>
          <tbody>
            {record.tries.map((each, index) => (
              <Row
                key={`${each.station}-${each.repetition}`}
                index={index}
                row={tryRow(each, record.sheet)}
                isShown={shown === index}
                review={reviewOf(each, motions[index] ?? null)}
                onReview={() => setShown(shown === index ? null : index)}
              />
            ))}
          </tbody>
        </table>
      </div>
      {one?.kind === "dialing" && motion !== null && (
        <div className="print:hidden">
          <TryReplay key={shown} record={record} one={one} motion={motion} />
        </div>
      )}
      {one?.kind === "zeroing" && <ReadingsReview one={one} place={(shown ?? 0) + 1} />}
    </section>
  );
}
