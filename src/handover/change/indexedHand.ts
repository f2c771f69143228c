import type { HandledLock } from "../../dialing/attempt";
import type { DialingFact } from "../../dialing/dialingFact";
import { HandReader } from "../../dialing/handReader";
import type { Combination } from "../../lock/combination";
import type { Graduations, Milliseconds } from "../../lock/dial";
import type { KeyedProfile } from "./changeProfile";
import type { KeyedPack } from "./keyedPack";

/**
 * The reading of a hand that dials numbers to the changing index.
 *
 * The procedure is the one for opening, without the draw. All positions are those that the changing index reads, so the
 * numbers, arrivals and stops are as one sees them there. What tells progress, advice and faults takes it for an attempt.
 */
export class IndexedHand implements HandledLock {
  readonly profile: KeyedProfile;
  readonly combination: Combination;
  readonly reader: HandReader;
  readonly pack: { errors(): Graduations[] };
  readonly opened = false;
  readonly isCoupled = false;
  readonly wheelErrors: Graduations[][] = [];
  private readonly keyed: KeyedPack;

  /**
   * @param keyed - the lock under the hand; it is only looked at
   * @param combination - the numbers that the hand means to dial
   * @param errors - how far the wheels stand from where those numbers put them, wheel 1 first, graduations
   */
  constructor(keyed: KeyedPack, combination: Combination, errors: () => Graduations[]) {
    this.profile = keyed.profile;
    this.combination = combination;
    this.keyed = keyed;
    this.pack = { errors };
    this.reader = new HandReader(keyed.profile, combination, this.dial);
  }

  /** What the changing index reads, unwrapped graduations. */
  get dial(): Graduations {
    return this.keyed.dial - this.profile.changing.index;
  }

  /**
   * Takes in that the dial has moved.
   *
   * @param before - the wheels' errors before the move
   * @param now_ms - time, or undefined where the motion has no times
   * @returns what happened, in order
   */
  moved(before: readonly Graduations[], now_ms: Milliseconds | undefined): readonly DialingFact[] {
    const facts = this.reader.moveTo(this.dial, now_ms);
    const { length } = this.reader.legs;
    if (length < this.wheelErrors.length) this.wheelErrors.length = length;
    while (this.wheelErrors.length < length) this.wheelErrors.push([...before]);
    return facts;
  }
}
