import { Attempt } from "../../src/dialing/attempt";
import type { AttemptStart } from "../../src/dialing/attemptStart";
import type { DialingFact } from "../../src/dialing/dialingFact";
import type { Combination } from "../../src/lock/combination";
import type { Graduations, Milliseconds } from "../../src/lock/dial";
import type { Profile } from "../../src/lock/profile";

/** What a hand does to a lock. */
export interface Hand {
  /** Positions of the hand, unwrapped graduations; it takes hold of the dial at the first. */
  readonly hand: readonly Graduations[];
  /** A time for each position, or none. */
  readonly times?: readonly Milliseconds[] | undefined;
  /** What differs from a lock at rest at the hand's first position. */
  readonly start?: Partial<AttemptStart> | undefined;
}

/** A lock after a hand has been at it, and what happened, in order. */
export function handled(
  profile: Profile,
  combination: Combination,
  { hand, times, start }: Hand,
): { readonly attempt: Attempt; readonly facts: DialingFact[] } {
  const attempt = new Attempt(profile, combination, { dial: hand[0] ?? 0, ...start });
  // The first position is a moment too: with times, a rest may begin there.
  const facts = hand.flatMap((position, i) => [
    ...attempt.turnBy(position - (hand[i - 1] ?? attempt.dial), times?.[i]),
  ]);
  return { attempt, facts };
}
