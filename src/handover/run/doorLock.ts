import { Attempt } from "../../dialing/attempt";
import { idealMotion } from "../../dialing/idealMotion";
import { nextAttempt } from "../../dialing/nextAttempt";
import { RunFollower, runLength } from "../../dialing/runs";
import type { Combination } from "../../lock/combination";
import { type Graduations, type Milliseconds, reading, signOf } from "../../lock/dial";
import { FRESH_MEMORY } from "../../lock/dialEncoder";
import type { Profile } from "../../lock/profile";
import { spinOffRule } from "../../lock/spinOffRule";
import { countingOf, type LearnedZero } from "../../lock/train/learnedZero";
import type { LockTrain } from "../../lock/train/lockTrain";
import { HeldLock } from "../holdback/heldLock";

/**
 * What the lock did under a hand, in the words of the handover. `drawnAgain`: the bolt came back although the numbers were
 * not dialed, because the wheels were still in line.
 */
export type LockHappening = "opened" | "drawnAgain" | "refused" | "thrown" | "spunOff" | "held";

/** A lock on a door at rest, as it is kept. */
export interface KeptLock {
  /** What it is meant to be set to, and what a hand dials. */
  readonly meant: Combination;
  /** What it is set to; null for a spoiled pack, which opens to nothing. */
  readonly setTo: Combination | null;
  /** Unwrapped position as the lock takes it, graduations. */
  readonly dial: Graduations;
  readonly slack?: readonly Graduations[] | undefined;
  readonly isOpen: boolean;
  readonly isHeld: boolean;
}

/** How far an encoder lock counts off before it has learned any zero, graduations; a training value. */
const NEVER_ZEROED: Graduations = 7;

/** A hand that draws pushes on a little, graduations. */
const OVERDRAW: Graduations = 1;

/**
 * The lock on the door: dial, ring and cam, what it is set to, its bolt and its holdback, under one hand.
 *
 * The hand goes by the index as it stands, true or not; the lock by what it has learned. Mutable.
 */
export class DoorLock {
  readonly profile: Profile;
  /** Dial, ring with the index, and cam. */
  readonly hand: LockTrain;
  meant: Combination;
  setTo: Combination | null;
  /** The zero that an encoder lock has learned, or null; a wheel pack learns none. */
  zero: LearnedZero | null = null;
  private readonly isDead: boolean;
  private held: HeldLock;
  private follower: RunFollower;
  /** Whether the run under way has counted as spinning off. */
  private isSpun = false;

  /** @param isDead - whether it reads no dial, as a board that fails its self-check: it then opens to no numbers */
  constructor(profile: Profile, hand: LockTrain, kept: KeptLock, zero: LearnedZero | null, isDead = false) {
    this.profile = profile;
    this.hand = hand;
    this.isDead = isDead;
    this.meant = kept.meant;
    this.setTo = kept.setTo;
    this.countFrom(zero);
    this.held = this.takeHold(kept.slack);
    this.follower = new RunFollower(this.held.dial, profile.turnback);
    if (kept.isOpen) this.openQuietly();
    if (kept.isHeld) this.held.setHoldback();
  }

  /** How far the bolt is drawn back, 0 to 1. */
  get retraction(): number {
    return this.held.retraction;
  }

  get isHeld(): boolean {
    return this.held.isHeld;
  }

  /** The lock as it stands, to be kept. */
  get kept(): KeptLock {
    const { attempt } = this.held;
    const { meant, setTo, isHeld } = this;
    const slack = attempt.pack?.slack();
    return { meant, setTo, dial: attempt.dial, ...(slack && { slack }), isOpen: this.retraction === 1, isHeld };
  }

  /**
   * Turns the dial by hand; what a stop or a held bolt does not let through is lost.
   *
   * @param by - graduations, left positive, one direction
   * @param now_ms - time, or undefined for a motion without times
   */
  turnBy(by: Graduations, now_ms?: Milliseconds): LockHappening[] {
    const wasBack = this.retraction > 0;
    const wasOpened = this.held.attempt.opened;
    const types = this.hand.drive(this.held, by, now_ms).map(({ type }) => type);
    const happened: LockHappening[] = [];
    if (types.includes("dial.held")) happened.push("held");
    if (types.includes("bolt.retracted")) happened.push(this.retracted(wasOpened));
    if (types.includes("draw.refused")) happened.push("refused");
    // The bolt is out as soon as the dial is where the draw began, though the nose may still be down there.
    const isOut = wasBack && this.retraction === 0;
    if (isOut || types.includes("bolt.thrown")) happened.push("thrown");
    if (types.includes("bolt.retracted")) this.isSpun = false;
    if (types.includes("bolt.thrown") || happened.includes("refused")) this.beginAnew();
    return [...happened, ...this.watchSpinning()];
  }

  /** What a bolt that has come back shows. A spoiled pack and a dead board open to no numbers, so the bolt does not come. */
  private retracted(wasOpened: boolean): LockHappening {
    if (this.setTo === null || this.isDead) return "refused";
    return !wasOpened && this.held.attempt.reader.legs.length > this.profile.procedure.length ? "opened" : "drawnAgain";
  }

  /** Whether the bolt is thrown and the wheels still stand where the draw brings it back. */
  get isStillInLine(): boolean {
    return this.retraction < 1 && this.held.attempt.pack?.isAligned() === true;
  }

  /** A lock in the same place with its bolt thrown, to try something on. */
  copyThrown(zero: LearnedZero | null = this.zero): DoorLock {
    const kept = { ...this.kept, isOpen: false, isHeld: false };
    return new DoorLock(this.profile, this.hand.copy(), kept, zero, this.isDead);
  }

  /**
   * A simulated hand dials numbers at the index and draws; where nothing comes it pushes on, and gives up.
   *
   * @param stopErrors - how far each stop runs past, graduations
   * @returns whether the bolt came
   */
  dialBy(numbers: Combination, stopErrors: readonly Graduations[]): boolean {
    // From a bolt that is only just thrown, a first turn in the way of the draw would bring it back undialed.
    if (this.retraction > 0 || this.isStillInLine) this.spinOff();
    const path = idealMotion(this.profile, numbers, this.hand.seen, stopErrors, OVERDRAW);
    const happened = path.slice(1).flatMap((stop) => this.turnTo(stop));
    if (happened.includes("opened")) return true;
    this.turnBy((signOf(this.profile.draw.turn) * this.profile.graduations) / 4);
    return false;
  }

  /** A simulated hand turns until the index reads what it wants: where friction held the dial back, it turns on. */
  private turnTo(stop: Graduations): LockHappening[] {
    const by = stop - this.hand.seen;
    const happened = this.turnBy(by);
    const rest = stop - this.hand.seen;
    return this.hand.ahead === 0 || rest * by <= 0 ? happened : [...happened, ...this.turnBy(rest)];
  }

  /** A simulated hand turns the dial back as far as throws the bolt. */
  throwBolt(): LockHappening[] {
    return this.turnBy(-signOf(this.profile.draw.turn) * (this.profile.draw.travel + OVERDRAW));
  }

  /** A simulated hand turns the dial far enough one way to put every wheel out of line. */
  spinOff(): LockHappening[] {
    return this.turnBy(-signOf(this.profile.draw.turn) * (this.spinning + this.profile.draw.travel + OVERDRAW));
  }

  setHoldback(): void {
    this.held.setHoldback();
  }

  releaseHoldback(): void {
    this.held.releaseHoldback();
  }

  /** Sets it to other numbers, the bolt as it is; `null` for a spoiled pack, whose bolt comes out. */
  set(meant: Combination, setTo: Combination | null): void {
    this.meant = meant;
    this.setTo = setTo;
    this.standAnew(setTo !== null);
  }

  /** Takes up a zero that has been learned, or lost, and where the dial stands. */
  learn(zero: LearnedZero | null): void {
    this.countFrom(zero);
    this.standAnew(true);
  }

  /** Puts the lock where its dial is now. @param keepsBolt - whether its bolt stays as far back as it is */
  private standAnew(keepsBolt: boolean): void {
    const { retraction } = this;
    const { draw } = this.profile;
    this.held = this.takeHold(this.held.attempt.pack?.slack());
    if (!keepsBolt || retraction === 0) return;
    this.openQuietly();
    this.moveQuietly(-signOf(draw.turn) * (1 - retraction) * draw.travel);
  }

  /** Turning one way that puts every wheel out of line, graduations. */
  private get spinning(): Graduations {
    return spinOffRule(this.profile).turns * this.profile.graduations;
  }

  private watchSpinning(): LockHappening[] {
    this.follower.moveTo(this.held.dial);
    const run = this.follower.current;
    const isLong = run !== null && runLength(run) >= this.spinning;
    if (this.isSpun || this.held.retraction > 0 || !isLong) return [];
    this.isSpun = true;
    return ["spunOff"];
  }

  private beginAnew(): void {
    this.isSpun = false;
    // A lock on a door has all the time it wants between tries.
    const afresh = { setTo: this.opensTo, memory: FRESH_MEMORY };
    this.held = new HeldLock(nextAttempt(this.held.attempt, this.meant, afresh));
  }

  /** Numbers that open it; those of a spoiled pack, or of a dead board, lie where nobody knows. */
  private get opensTo(): Combination {
    const { graduations } = this.profile;
    if (this.setTo !== null && !this.isDead) return this.setTo;
    return this.meant.map((number, k) => reading(number + graduations * (0.31 + 0.17 * k), graduations));
  }

  private takeHold(slack: readonly Graduations[] | undefined): HeldLock {
    const start = { dial: this.hand.taken, setTo: this.opensTo, ...(slack && { slack }) };
    return new HeldLock(new Attempt(this.profile, this.meant, start));
  }

  /** Brings the bolt back to where it was: the lock is dialed open, and the dial stands where that leaves it. */
  private openQuietly(): void {
    const from = this.held.dial;
    for (const stop of idealMotion(this.profile, this.opensTo, from, [], OVERDRAW).slice(1)) {
      this.moveQuietly(stop - this.held.dial);
    }
    this.isSpun = false;
    this.follower = new RunFollower(this.held.dial, this.profile.turnback);
  }

  private moveQuietly(by: Graduations): void {
    const before = this.held.dial;
    this.held.turnBy(by);
    this.hand.turnBy(this.held.dial - before);
  }

  private countFrom(zero: LearnedZero | null): void {
    this.zero = zero;
    this.hand.counting = countingOf(this.profile, zero ?? { right: NEVER_ZEROED, left: NEVER_ZEROED });
  }
}
