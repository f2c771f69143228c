import type { HandledLock } from "../../dialing/attempt";
import type { DialingFact } from "../../dialing/dialingFact";
import { HandReader } from "../../dialing/handReader";
import type { Combination } from "../../lock/combination";
import type { Graduations, Milliseconds } from "../../lock/dial";
import type { Profile } from "../../lock/profile";

/**
 * The reading of a hand that dials numbers for a change: no lock answers, but progress, advice and faults are told of it
 * as of an attempt.
 *
 * Positions are those that the index in use reads, so at the changing index numbers, arrivals and stops are as one sees
 * them there. Mutable.
 */
export class WatchedHand implements HandledLock {
  readonly profile: Profile;
  readonly combination: Combination;
  readonly reader: HandReader;
  readonly pack: { errors(): Graduations[] } | null;
  readonly opened = false;
  readonly isCoupled = false;
  readonly wheelErrors: Graduations[][] = [];

  /**
   * @param combination - the numbers that the hand means to dial
   * @param position - what the index in use reads, unwrapped graduations
   * @param errors - how far the wheels stand from where those numbers put them, wheel 1 first, graduations; null in a lock
   *   without wheels
   */
  constructor(profile: Profile, combination: Combination, position: Graduations, errors: (() => Graduations[]) | null) {
    this.profile = profile;
    this.combination = combination;
    this.pack = errors === null ? null : { errors };
    this.reader = new HandReader(profile, combination, position);
  }

  /** What the index in use reads, unwrapped graduations. */
  get dial(): Graduations {
    return this.reader.position;
  }

  /**
   * Takes in that the dial has moved.
   *
   * @param position - what the index in use reads now, unwrapped graduations
   * @param before - the wheels' errors before the move; empty in a lock without wheels
   * @param now_ms - time, or undefined where the motion has no times
   * @returns what happened, in order
   */
  moved(
    position: Graduations,
    before: readonly Graduations[],
    now_ms: Milliseconds | undefined,
  ): readonly DialingFact[] {
    const facts = this.reader.moveTo(position, now_ms);
    const { length } = this.reader.legs;
    if (length < this.wheelErrors.length) this.wheelErrors.length = length;
    while (this.wheelErrors.length < length) this.wheelErrors.push([...before]);
    return facts;
  }
}
