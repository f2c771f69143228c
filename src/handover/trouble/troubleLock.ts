import { Attempt } from "../../dialing/attempt";
import type { DialingFact } from "../../dialing/dialingFact";
import {
  type CamPosition,
  type Graduations,
  type Milliseconds,
  type Position,
  type Reading,
  signOf,
  turnOf,
} from "../../lock/dial";
import { countingOf } from "../../lock/train/learnedZero";
import { LockTrain } from "../../lock/train/lockTrain";
import { CONDITIONS } from "./conditions";
import { type Mechanics, soundMechanics } from "./mechanics";
import type { LockCard, TroubleTask } from "./trouble";

/** Nearer than this a dial has come to where it was to go; by how much the hand goes on at the least; graduations. */
const CLOSE: Graduations = 1e-6;
const PUSH: Graduations = 0.02;

/** How a try ended. */
export type TryEnd = "opened" | "refused";

/**
 * A lock with one hidden condition, under a hand.
 *
 * The lock as it really is, at the end of its train; and beside it what the hand did by the index. Mutable.
 */
export class TroubleLock {
  readonly card: LockCard;
  readonly mechanics: Mechanics;
  /** The lock as it really is. */
  attempt: Attempt;
  /** What the hand did by the index: the same motion on a lock in order. It knows nothing of the condition. */
  byIndex: Attempt;
  /** How the try under way ended, or null. */
  end: TryEnd | null = null;
  /** Hand, dial, ring and cam. */
  private readonly train: LockTrain;

  /** @param start - where the dial stands, graduations */
  constructor({ card, trouble }: TroubleTask, start: Graduations) {
    this.card = card;
    this.mechanics = CONDITIONS[trouble.kind].apply(soundMechanics(card), trouble);
    this.train = new LockTrain({ ...this.mechanics, start }, card.profile.graduations);
    this.train.counting = countingOf(this.mechanics.profile, this.mechanics.zero);
    this.attempt = this.newAttempt();
    this.byIndex = this.newByIndex();
  }

  /** Unwrapped dial position, graduations. */
  get dial(): Position {
    return this.train.dial;
  }

  /** What the index reads, unwrapped graduations. */
  get seen(): Reading {
    return this.train.seen;
  }

  /** How far the index stands off its true place, graduations, left positive. */
  get indexError(): Graduations {
    return this.train.indexError;
  }

  /** Unwrapped cam position, graduations. */
  get cam(): CamPosition {
    return this.train.camPosition;
  }

  /**
   * Moves the hand. A move after the end of a try begins the next one.
   *
   * @param by - graduations, left positive
   */
  turnHandBy(by: Graduations, now_ms: Milliseconds): void {
    if (this.end !== null) this.beginTry();
    const before = this.dial;
    const facts = this.train.drive(this.attempt, by, now_ms);
    if (this.dial === before) return;
    this.byIndex.turnBy(this.seen - this.byIndex.dial, now_ms);
    this.note(facts);
  }

  /** How far the hand is ahead of the dial, graduations, left positive. */
  get ahead(): Graduations {
    return this.train.ahead;
  }

  /** Turns until the index reads a position, as the eye wants it. @param position - unwrapped graduations */
  bringTo(position: Graduations, now_ms: Milliseconds): void {
    const by = position - this.seen;
    if (by === 0) return;
    const sign = signOf(turnOf(by));
    this.turnHandBy(by + sign * this.mechanics.drag - this.train.ahead, now_ms);
    // Where something catches the dial, the hand goes on until it has come.
    const left = () => sign * (position - this.seen);
    while (this.mechanics.catching !== undefined && left() > CLOSE) {
      this.turnHandBy(sign * Math.max(PUSH, left()), now_ms);
    }
  }

  /** Takes the hand off the dial: what it was ahead is lost. */
  letGo(): void {
    this.train.letGo();
  }

  /** Lets time pass over a resting dial. */
  rest(now_ms: Milliseconds): void {
    if (this.end !== null) return;
    this.note(this.attempt.turnBy(0, now_ms));
    this.byIndex.turnBy(0, now_ms);
  }

  /** Begins a try with the lock as the last one left it. */
  beginTry(): void {
    this.attempt = this.newAttempt(this.attempt.pack?.slack());
    this.byIndex = this.newByIndex();
    this.end = null;
  }

  private note(facts: readonly DialingFact[]): void {
    if (facts.some(({ type }) => type === "bolt.retracted")) this.end = "opened";
    else if (facts.some(({ type }) => type === "draw.refused")) this.end ??= "refused";
  }

  private newAttempt(slack?: readonly Graduations[]): Attempt {
    const { profile, combination } = this.mechanics;
    return new Attempt(profile, combination, { dial: this.train.taken, slack });
  }

  private newByIndex(): Attempt {
    return new Attempt(this.card.profile, this.card.combination, { dial: this.seen });
  }
}
