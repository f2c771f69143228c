import { Attempt } from "../../../dialing/attempt";
import type { AttemptStart } from "../../../dialing/attemptStart";
import type { DialingFact } from "../../../dialing/dialingFact";
import type { Graduations, Milliseconds } from "../../../lock/dial";
import { AttemptRecorder } from "../../replay/attemptRecorder";
import type { Outcome } from "../../replay/outcome";
import type { BenchSetup } from "./benchSetup";

/** One lock under one hand: the attempt, what was recorded of it, and how it ended. */
export interface Round {
  readonly attempt: Attempt;
  readonly recorder: AttemptRecorder;
  outcome: Outcome | null;
  /** Own estimate of the worst stop, graduations; null until it is given or skipped. */
  estimate: Estimate | null;
}

/** How far off the worst stop was by one's own feeling, graduations without sign; or that it was not said. */
export type Estimate = Graduations | "skipped";

/** A round that may follow, and what happened in it so far. */
export interface NextRound {
  readonly round: Round;
  readonly facts: DialingFact[];
  /** Where the dial stood when the hand first turned about or rested, graduations; null before that. */
  meantFrom: Graduations | null;
}

/** A lock put under the hand. */
export function newRound({ profile, combination }: BenchSetup, start: AttemptStart): Round {
  const attempt = new Attempt(profile, combination, start);
  return { attempt, recorder: new AttemptRecorder(start), outcome: null, estimate: null };
}

/** Moves a lock and takes the move down. Times are those of the steady clock: a lock may outlast an attempt. */
export function turn({ attempt, recorder }: Round, by: Graduations, now: Milliseconds): readonly DialingFact[] {
  return attempt.turnBy(recorder.take(by, now), now);
}

/** Where a lock stands after an attempt, for the one that follows without a break. */
export function startAfter({ dial, pack, memory }: Attempt): AttemptStart {
  return pack === null ? { dial, memory } : { dial, slack: pack.slack() };
}
