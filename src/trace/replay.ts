import { Attempt } from "../dialing/attempt";
import type { AttemptStart } from "../dialing/attemptStart";
import { coastsTo } from "../dialing/coasting";
import { tellFaults, type WordedFault } from "../dialing/faultWords";
import { arrivals, stopError } from "../dialing/runs";
import { type Graduations, reading, type Turn } from "../lock/dial";
import { exact } from "../lock/exact";
import type { RecordedAttempt } from "./recordedAttempt";

/** One run of a replayed attempt. Before the fresh start, in the draw and after it no number applies: null. */
export interface ReplayedRun {
  readonly turn: Turn;
  /** Unwrapped graduations. */
  readonly from: Graduations;
  readonly to: Graduations;
  readonly arrivals: number | null;
  /** Graduations; positive ran past. */
  readonly stopError: Graduations | null;
}

/** What a replayed attempt came to. */
export interface Replayed {
  readonly opened: boolean;
  /** Reading at the end, graduations. */
  readonly dial: Graduations;
  /** Readings of the wheels, wheel 1 first; none in an encoder lock. */
  readonly stands: readonly Graduations[];
  readonly errors: readonly Graduations[];
  readonly runs: readonly ReplayedRun[];
  readonly faults: readonly Pick<WordedFault, "code" | "number" | "size" | "message">[];
}

/** Where an attempt starts: as recorded, or at rest at its first position. */
export function startOf({ start, positions }: RecordedAttempt): AttemptStart {
  return start ?? { dial: positions[0] ?? 0 };
}

/**
 * Sets up the lock of a recorded attempt and plays its motion, or part of it.
 *
 * With a start the first move runs from there to the first position; without one the hand takes hold at the first
 * position. Positions are the hand's: what a positive stop swallows stays swallowed.
 *
 * @param count - how many positions to play; all, if left out
 * @throws {LockError} for a start that cannot be
 */
export function replay(recorded: RecordedAttempt, count = recorded.positions.length): Attempt {
  const { profile, combination, positions, times_ms } = recorded;
  const start = startOf(recorded);
  const attempt = new Attempt(profile, combination, start);
  let hand = exact(start.dial);
  for (let i = 0; i < count; i++) {
    i = coastsTo(attempt, hand, positions, i, count, times_ms !== undefined);
    const position = exact(positions[i] ?? hand);
    attempt.turnBy(position - hand, times_ms?.[i]);
    hand = position;
  }
  return attempt;
}

const runsOf = ({ reader, profile, combination }: Attempt): ReplayedRun[] => {
  const stepOf = new Map<number, number>();
  for (const leg of reader.legs) {
    for (let run = leg.firstRun; run <= leg.lastRun; run++) {
      if (reader.runs[run]?.turn === leg.turn) stepOf.set(run, leg.step);
    }
  }
  return reader.runs.map((run, index) => {
    const number = combination[stepOf.get(index) ?? combination.length];
    const { turn, from, to } = run;
    if (number === undefined) return { turn, from, to, arrivals: null, stopError: null };
    return {
      turn,
      from,
      to,
      arrivals: arrivals(run, number, profile.graduations, profile.stopTolerance),
      stopError: stopError(turn, to, number, profile.graduations),
    };
  });
};

/** The result of an attempt, as the replay format gives it. */
export function resultOf(attempt: Attempt): Replayed {
  return {
    opened: attempt.opened,
    dial: reading(attempt.dial, attempt.profile.graduations),
    stands: attempt.pack?.stands() ?? [],
    errors: attempt.pack?.errors() ?? [],
    runs: runsOf(attempt),
    faults: tellFaults(attempt).map(({ code, number, size, message }) => ({ code, number, size, message })),
  };
}
