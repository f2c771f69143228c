import type { Graduations, Milliseconds, Turn } from "./dial";
import type { DialEncoderProfile } from "./profile";

/** What the encoder has made of one run: the facts it compares with a step. */
export interface EncodedRun {
  readonly turn: Turn;
  readonly arrivals: number;
  /** Graduations; positive ran past, negative stopped short. */
  readonly stopError: Graduations;
}

/**
 * Whether runs spell the combination: same directions, arrivals enough, every stop on its number.
 *
 * @param runs - from the fresh start on, one a step, the draw left out
 */
export function spellsCombination(profile: DialEncoderProfile, runs: readonly EncodedRun[]): boolean {
  const { procedure, stopTolerance } = profile;
  return (
    runs.length === procedure.length &&
    procedure.every((step, k) => {
      const run = runs[k];
      return (
        run !== undefined &&
        run.turn === step.turn &&
        run.arrivals >= step.arrivals &&
        Math.abs(run.stopError) <= stopTolerance
      );
    })
  );
}

/** What came of a draw. */
export type DrawAnswer = "opened" | "wrong" | "waiting";

/** An encoder lock's memory of tries. */
export interface EncoderMemory {
  readonly wrongTries: number;
  /** Until when it refuses every draw, in the attempt's time, or null. */
  readonly waitsUntil_ms: Milliseconds | null;
}

/** A lock that has not been tried yet. */
export const FRESH_MEMORY: EncoderMemory = { wrongTries: 0, waitsUntil_ms: null };

/** Whether the lock refuses every draw at a time. Without times it never waits. */
export function isWaiting(memory: EncoderMemory, now_ms: Milliseconds | undefined): boolean {
  return memory.waitsUntil_ms !== null && now_ms !== undefined && now_ms < memory.waitsUntil_ms;
}

/**
 * Judges a draw and remembers it.
 *
 * After as many wrong tries in a row as the profile allows, the lock waits; a draw made while it waits does not count.
 *
 * @param isRight - whether the runs before the draw spell the combination
 * @param now_ms - time of the draw, or undefined where the motion has no times
 */
export function judgeDraw(
  { wrongTry }: DialEncoderProfile,
  memory: EncoderMemory,
  isRight: boolean,
  now_ms: Milliseconds | undefined,
): { readonly answer: DrawAnswer; readonly memory: EncoderMemory } {
  if (isWaiting(memory, now_ms)) return { answer: "waiting", memory };
  if (isRight) return { answer: "opened", memory: FRESH_MEMORY };
  const wrongTries = memory.wrongTries + 1;
  const mustWait = wrongTry !== undefined && wrongTries >= wrongTry.tries && now_ms !== undefined;
  return {
    answer: "wrong",
    memory: mustWait
      ? { wrongTries: 0, waitsUntil_ms: now_ms + wrongTry.wait_s * 1000 }
      : { wrongTries, waitsUntil_ms: null },
  };
}
