import { bisectRight } from "d3-array";
import type { TimedMotion } from "../../../dialing/motion";
import { type Graduations, type Milliseconds, signOf } from "../../../lock/dial";
import { type ChartRun, type Face, turnsAt } from "./turnPath";

/** Where the dial stood at a moment of the recording. */
export interface Moment {
  /** Unwrapped dial position, graduations. */
  readonly position: Graduations;
  /** Turns since the top of the chart; negative above it. */
  readonly turns: number;
}

/** A recording laid onto the chart: one moment for each time. */
interface RecordedPath {
  readonly times_ms: readonly Milliseconds[];
  readonly moments: readonly Moment[];
}

/**
 * Lays a recording onto the runs that were read from it, so that the playhead keeps to the drawn line: small wobbles
 * go back along the run, and what a positive stop did not let through moves nothing.
 *
 * @param runs - every run of the attempt, stacked
 * @param turnback - coming back by more than this ends a run, graduations
 */
export function layRecording(
  recording: Omit<TimedMotion, "start">,
  runs: readonly ChartRun[],
  face: Face,
  turnback: Graduations,
): RecordedPath {
  const [first] = runs;
  let hand = first?.from ?? recording.positions[0] ?? 0;
  let dial = hand;
  let furthest = dial;
  let index = 0;
  const moments = recording.positions.map((position): Moment => {
    dial = pushed(dial, position - hand, runs[index]);
    hand = position;
    furthest = furtherOf(dial, furthest, runs[index]);
    if (Math.abs(furthest - dial) > turnback && index < runs.length - 1) {
      index += 1;
      furthest = dial;
    }
    const run = runs[index];
    return { position: dial, turns: run === undefined ? 0 : turnsAt(run, dial, face) };
  });
  return { times_ms: recording.times_ms, moments };
}

/** A move of the hand, held up at the furthest point that the run came to. */
function pushed(dial: Graduations, by: Graduations, run: ChartRun | undefined): Graduations {
  if (run === undefined) return dial;
  const s = signOf(run.turn);
  return s * by > 0 ? s * Math.min(s * (dial + by), s * run.to) : dial + by;
}

function furtherOf(dial: Graduations, furthest: Graduations, run: ChartRun | undefined): Graduations {
  return run?.turn === "right" ? Math.min(dial, furthest) : Math.max(dial, furthest);
}

/**
 * Where the dial stood at a time, between samples in proportion; before the first and after the last it rests.
 *
 * @returns null for a recording of nothing
 */
export function momentAt({ times_ms, moments }: RecordedPath, time_ms: Milliseconds): Moment | null {
  const index = Math.max(0, bisectRight(times_ms, time_ms) - 1);
  const before = moments[index];
  const after = moments[index + 1] ?? before;
  if (before === undefined || after === undefined) return null;
  const start = times_ms[index] ?? 0;
  const span = (times_ms[index + 1] ?? start) - start;
  const part = span > 0 ? Math.min(1, Math.max(0, (time_ms - start) / span)) : 0;
  return {
    position: before.position + part * (after.position - before.position),
    turns: before.turns + part * (after.turns - before.turns),
  };
}

/**
 * The first time at which the path had come as far down as this.
 *
 * @returns milliseconds; the last time where it never came so far
 */
export function timeAtTurns({ times_ms, moments }: RecordedPath, turns: number): Milliseconds {
  const index = moments.findIndex((moment) => moment.turns >= turns);
  if (index < 0) return times_ms.at(-1) ?? 0;
  const end = times_ms[index] ?? 0;
  const before = moments[index - 1];
  const after = moments[index];
  if (before === undefined || after === undefined) return end;
  const start = times_ms[index - 1] ?? end;
  const span = after.turns - before.turns;
  return span > 0 ? start + ((turns - before.turns) / span) * (end - start) : end;
}
