import type { Combination } from "./combination";
import { type Graduations, reading, signOf, wrap } from "./dial";
import { fromMillionths, inMillionths } from "./exact";
import { gateOffsets } from "./gateOffsets";
import type { WheelPackProfile } from "./profile";
import { checkStart, FARTHEST, tooFar, type WheelPackState } from "./wheelPackState";

/** `FARTHEST` in millionths. */
const FARTHEST_STEP = inMillionths(FARTHEST);

/**
 * A wheel pack with its cam, lever and bolt, turned by hand.
 *
 * Each wheel follows its driver by a play operator: a driver at d and a follower at f with free play F give
 * f' = min(max(f, d), d + F), from the cam outward to wheel 1 (Krasnosel'skii and Pokrovskii 1989, Systems with
 * Hysteresis). A move of any size is solved at once: it is split only where the dial crosses the engagement point.
 *
 * Inside, every position is a whole count of millionths of a graduation (`exact.ts`): nothing is rounded but what comes
 * in, and a draw that ends exactly at the stop ends there.
 *
 * The object is mutable, for speed. `state` gives an immutable picture of it, and `restore` goes back to one.
 */
export class WheelPack {
  readonly profile: WheelPackProfile;
  readonly combination: Combination;

  // Numbers from the start, not undefined: engines then keep them unboxed, twice as fast. Counts of millionths, all.
  private at = 0;
  /** Where the nose dropped; meaningless while it is up. */
  private nose = 0;
  private isNoseDown = false;
  /** The engagement point that the draw meets next, strictly beyond the dial. */
  private mark = 0;
  private readonly count: number;
  private readonly turn: number;
  private readonly engageAt: number;
  /** +1 where the draw turns left, -1 where it turns right. */
  private readonly drawSign: 1 | -1;
  private readonly travel: number;
  private readonly freePlay: Float64Array;
  private readonly followers: Float64Array;
  /** Where each wheel stands when its gate is true, and how far off it may be. */
  private readonly gates: Float64Array;
  private readonly tolerances: Float64Array;

  /**
   * @param start - where the pack stands; without it, at reading 0 with every wheel resting on its driver
   * @throws {LockError} for a slack outside its free play, a nose that does not fit the dial, or a wild position
   */
  constructor(profile: WheelPackProfile, combination: Combination, start?: WheelPackState) {
    this.profile = profile;
    this.combination = combination;
    this.count = profile.procedure.length;
    this.turn = inMillionths(profile.graduations);
    this.engageAt = inMillionths(profile.draw.engageAt);
    this.drawSign = signOf(profile.draw.turn);
    this.travel = inMillionths(profile.draw.travel);
    this.freePlay = new Float64Array(profile.wheelPack.freePlay.map(inMillionths));
    this.tolerances = new Float64Array(profile.wheelPack.gateTolerance.map(inMillionths));
    const offsets = gateOffsets(profile);
    this.gates = new Float64Array(combination.map((number, k) => inMillionths(number) + inMillionths(offsets[k] ?? 0)));
    this.followers = new Float64Array(this.count);
    this.restore(start ?? { dial: 0, slack: profile.wheelPack.freePlay.map(() => 0), engagedAt: null });
  }

  /** Unwrapped dial position, graduations. */
  get dial(): Graduations {
    return fromMillionths(this.at);
  }

  /** Dial position at which the nose dropped, graduations, or null while it rides on the cam. */
  get engagedAt(): Graduations | null {
    return this.isNoseDown ? fromMillionths(this.nose) : null;
  }

  /** An immutable picture of the pack. */
  get state(): WheelPackState {
    return { dial: this.dial, slack: this.slack(), engagedAt: this.engagedAt };
  }

  /** Puts the pack back to a picture of it. @throws {LockError} as the constructor */
  restore(state: WheelPackState): void {
    checkStart(this.profile, state);
    this.at = inMillionths(state.dial);
    this.isNoseDown = state.engagedAt !== null;
    this.nose = inMillionths(state.engagedAt ?? 0);
    let driver = this.at;
    for (let k = this.count - 1; k >= 0; k--) {
      driver += inMillionths(state.slack[k] ?? 0);
      this.followers[k] = driver;
    }
    this.mark = this.markBeyond(this.at);
  }

  /**
   * Turns the dial. What the positive stop does not let through is lost.
   *
   * @param by - graduations, left positive
   * @throws {LockError} `too-far` when the dial would leave the range in which positions are exact
   */
  turnBy(by: Graduations): void {
    this.turnTo(this.at + inMillionths(by));
  }

  /**
   * Turns the dial while something holds every gate away from the fence, so that the nose cannot drop.
   *
   * @param by - graduations, left positive; the nose must be up
   * @throws {LockError} `too-far`
   */
  turnHeldAside(by: Graduations): void {
    const target = this.at + inMillionths(by);
    if (!(Math.abs(target) <= FARTHEST_STEP)) throw tooFar(fromMillionths(target));
    this.drag(target);
    this.mark = this.markBeyond(target);
  }

  /**
   * The batch path: a whole motion of the hand, one position after another. It ends where `turnBy`, move by move, would.
   *
   * @param hand - positions of the hand, graduations; the first is where the hand takes hold of the dial
   * @throws {LockError} `too-far`, as `turnBy`; the pack is left where the hand last changed direction
   */
  turnThrough(hand: ArrayLike<Graduations>): void {
    let way = 1;
    let before = hand[0] ?? 0;
    // How far the dial is ahead of the hand; a positive stop changes it.
    let ahead = this.at - inMillionths(before);
    for (let i = 1; i < hand.length; i++) {
      const now = hand[i] as number;
      // Stopping on the way changes nothing, so wheels and nose need looking at only where the hand turns back.
      // Asked the other way round, so that what is no number is looked at too, and refused.
      if (!((now - before) * way >= 0)) {
        const held = inMillionths(before);
        this.turnTo(ahead + held);
        ahead = this.at - held;
        way = -way;
      }
      before = now;
    }
    this.turnTo(ahead + inMillionths(before));
  }

  /** Unwrapped position of each wheel, wheel 1 first, graduations. */
  positions(): Graduations[] {
    const positions: Graduations[] = [];
    for (const follower of this.followers) positions.push(fromMillionths(follower));
    return positions;
  }

  /** Where each wheel stands, wheel 1 first: readings in [0, one turn). */
  stands(): Graduations[] {
    return this.positions().map((position) => reading(position, this.profile.graduations));
  }

  /** How far each gate is off the fence, wheel 1 first: graduations in (-half a turn, half a turn], left positive. */
  errors(): Graduations[] {
    const { graduations } = this.profile;
    const errors: Graduations[] = [];
    for (let k = 0; k < this.count; k++) {
      errors.push(wrap(fromMillionths((this.followers[k] as number) - (this.gates[k] as number)), graduations));
    }
    return errors;
  }

  /** How far each wheel leads its driver, wheel 1 first, graduations. */
  slack(): Graduations[] {
    return Array.from(this.followers, (follower, k) => fromMillionths(follower - (this.followers[k + 1] ?? this.at)));
  }

  /** Whether every gate stands under the fence. */
  isAligned(): boolean {
    for (let k = 0; k < this.count; k++) {
      const error = Math.abs(((this.followers[k] as number) - (this.gates[k] as number)) % this.turn);
      if (Math.min(error, this.turn - error) > (this.tolerances[k] as number)) return false;
    }
    return true;
  }

  /** How far the bolt is drawn back: 0 thrown, 1 retracted with the dial at the positive stop. */
  get retraction(): number {
    // Adding 0 keeps -0 from being an answer.
    return this.isNoseDown ? ((this.at - this.nose) * this.drawSign) / this.travel + 0 : 0;
  }

  /** Goes to a dial position, however far, all in one direction. */
  private turnTo(target: number): void {
    // In place: a call for it would double the time of a move.
    if (!(target >= -FARTHEST_STEP && target <= FARTHEST_STEP)) throw tooFar(fromMillionths(target));
    if (this.isNoseDown) this.turnEngaged(target);
    else if ((target - this.mark) * this.drawSign >= 0) this.turnAcrossMarks(target);
    else {
      this.drag(target);
      if ((this.mark - target) * this.drawSign > this.turn) this.mark = this.markBeyond(target);
    }
  }

  /** Moves cam and wheels, each following its driver, from the cam outward; the nose is left alone. */
  private drag(dial: number): void {
    const { followers, freePlay } = this;
    this.at = dial;
    let driver = dial;
    for (let k = followers.length - 1; k >= 0; k--) {
      const follower = followers[k] as number;
      const farthest = driver + (freePlay[k] as number);
      // A wheel that is not met stays, and with it every wheel behind it.
      if (follower >= driver && follower <= farthest) return;
      driver = follower < driver ? driver : farthest;
      followers[k] = driver;
    }
  }

  /** The engagement point strictly beyond a position in the direction of the draw. */
  private markBeyond(dial: number): number {
    const { drawSign, turn, engageAt } = this;
    const along = drawSign * (dial - engageAt);
    return engageAt + drawSign * turn * (Math.floor(along / turn) + 1);
  }

  private turnAcrossMarks(target: number): void {
    // After as many crossings as there are wheels every wheel is carried, and later crossings all look the same.
    for (let crossing = 0; crossing <= this.count && (target - this.mark) * this.drawSign >= 0; crossing++) {
      this.drag(this.mark);
      if (this.isAligned()) {
        this.isNoseDown = true;
        this.nose = this.mark;
        this.turnEngaged(target);
        return;
      }
      this.mark += this.drawSign * this.turn;
    }
    this.drag(target);
    if ((target - this.mark) * this.drawSign >= 0) this.mark = this.markBeyond(target);
  }

  private turnEngaged(target: number): void {
    const { nose, drawSign, travel } = this;
    if ((target - nose) * drawSign >= 0) {
      const stop = nose + drawSign * travel;
      this.drag((target - stop) * drawSign < 0 ? target : stop);
      return;
    }
    this.isNoseDown = false;
    this.drag(target);
    this.mark = this.markBeyond(target);
  }
}
