import { Attempt } from "../../dialing/attempt";
import type { DialingFact } from "../../dialing/dialingFact";
import { type Graduations, type Milliseconds, signOf, turnOf } from "../../lock/dial";
import { driven, lagging } from "../../lock/play";
import { takenPosition } from "../../zeroing/learnedZero";
import { ZeroLock } from "../../zeroing/zeroLock";
import { CONDITIONS } from "./conditions";
import { type Mechanics, soundMechanics } from "./mechanics";
import type { LockCard, TroubleTask } from "./trouble";

/** How a try ended. */
export type TryEnd = "opened" | "refused";

/**
 * A lock with one hidden condition, under a hand.
 *
 * Hand, dial, cam and the lock behind it are a chain: the dial follows the hand with friction, the cam follows the dial
 * with lost motion, and pack or encoder follow the cam. Each joint is a play operator (`lock/play`). Mutable.
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
  private readonly shaft: ZeroLock;
  /** How far the hand is ahead of the dial, graduations, left positive. */
  private ahead: Graduations = 0;

  /** @param start - where the dial stands, graduations */
  constructor({ card, trouble }: TroubleTask, start: Graduations) {
    this.card = card;
    this.mechanics = CONDITIONS[trouble.kind].apply(soundMechanics(card), trouble);
    const { indexOffset, lostMotion } = this.mechanics;
    this.shaft = new ZeroLock({ indexOffset, lostMotion, noise: 0, start }, card.profile.graduations);
    this.attempt = this.newAttempt();
    this.byIndex = this.newByIndex();
  }

  /** Unwrapped dial position, graduations. */
  get dial(): Graduations {
    return this.shaft.dial;
  }

  /** What the index reads, unwrapped graduations. */
  get seen(): Graduations {
    return this.shaft.seen;
  }

  /** How far the index stands off its true place, graduations, left positive. */
  get indexError(): Graduations {
    return this.shaft.indexError;
  }

  /** Unwrapped cam position, graduations. */
  get cam(): Graduations {
    return this.shaft.camPosition;
  }

  /**
   * Moves the hand. A move after the end of a try begins the next one.
   *
   * @param by - graduations, left positive
   */
  turnHandBy(by: Graduations, now_ms: Milliseconds): void {
    if (this.end !== null) this.beginTry();
    this.ahead += by;
    const move = driven(0, this.ahead, lagging(this.mechanics.drag));
    if (move === 0) return;
    this.ahead -= move;
    this.drive(move, now_ms);
  }

  /** Turns until the index reads a position, as the eye wants it. @param position - unwrapped graduations */
  bringTo(position: Graduations, now_ms: Milliseconds): void {
    const by = position - this.seen;
    if (by !== 0) this.turnHandBy(by + signOf(turnOf(by)) * this.mechanics.drag - this.ahead, now_ms);
  }

  /** Takes the hand off the dial: what it was ahead is lost. */
  letGo(): void {
    this.ahead = 0;
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

  private drive(move: Graduations, now_ms: Milliseconds): void {
    this.shaft.turnBy(move);
    const taken = this.taken();
    const facts = this.attempt.turnBy(taken - this.attempt.dial, now_ms);
    this.shaft.holdBack(taken - this.attempt.dial);
    this.byIndex.turnBy(this.shaft.seen - this.byIndex.dial, now_ms);
    this.note(facts);
  }

  private note(facts: readonly DialingFact[]): void {
    if (facts.some(({ type }) => type === "bolt.retracted")) this.end = "opened";
    else if (facts.some(({ type }) => type === "draw.refused")) this.end ??= "refused";
  }

  /** Where the lock takes its dial to be: a pack goes with the cam, an encoder counts from the zero it has. */
  private taken(): Graduations {
    const { profile, zero } = this.mechanics;
    const { camPosition, camTurn } = this.shaft;
    if (profile.kind === "wheel-pack") return camPosition;
    return takenPosition(camPosition, zero, camTurn ?? profile.procedure[0]?.turn ?? "left");
  }

  private newAttempt(slack?: readonly Graduations[]): Attempt {
    const { profile, combination } = this.mechanics;
    return new Attempt(profile, combination, { dial: this.taken(), slack });
  }

  private newByIndex(): Attempt {
    return new Attempt(this.card.profile, this.card.combination, { dial: this.seen });
  }
}
