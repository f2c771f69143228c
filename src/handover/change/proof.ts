import { Attempt } from "../../dialing/attempt";
import type { AttemptStart } from "../../dialing/attemptStart";
import type { DialingFact } from "../../dialing/dialingFact";
import { nextAttempt } from "../../dialing/nextAttempt";
import type { Combination } from "../../lock/combination";
import { type Graduations, type Milliseconds, turnOf } from "../../lock/dial";
import type { Profile } from "../../lock/profile";

/** What a move in a proof brought. */
export interface ProofMove {
  readonly facts: readonly DialingFact[];
  /** Whether it ended a try, and how; null while none has ended. */
  readonly ended: "opened" | "refused" | null;
}

/**
 * Trying the new combination at the opening index, as often as one likes.
 *
 * The hand dials the combination that is meant; the lock opens to the one it is really set to. An opening counts only
 * when all the numbers have been dialed for it. Mutable.
 */
export class Proof {
  /** The try under way, or the one that has just ended. */
  attempt: Attempt;
  /** Openings that count. */
  opened = 0;
  refused = 0;
  private readonly profile: Profile;
  private readonly meant: Combination;
  private readonly setTo: Combination;
  private hasCounted = false;

  /**
   * @param meant - what the hand dials
   * @param setTo - what opens the lock
   * @param start - where it stands
   * @throws {LockError} as `Attempt`
   */
  constructor(profile: Profile, meant: Combination, setTo: Combination, start: AttemptStart) {
    this.profile = profile;
    this.meant = meant;
    this.setTo = setTo;
    this.attempt = new Attempt(profile, meant, { ...start, setTo });
  }

  /**
   * Turns the dial.
   *
   * @param by - graduations, left positive, one direction
   * @throws {LockError} `too-far`
   */
  turnBy(by: Graduations, now_ms?: Milliseconds): ProofMove {
    if (by !== 0 && this.dialsAnyway(by)) this.beginAnew(now_ms);
    const { attempt } = this;
    const facts = attempt.turnBy(by, now_ms);
    const has = (type: DialingFact["type"]) => facts.some((fact) => fact.type === type);
    const wasDialed = attempt.reader.legs.length > this.profile.procedure.length;
    const isCounted = has("bolt.retracted") && wasDialed && !this.hasCounted;
    if (isCounted) this.hasCounted = true;
    if (this.isNextTry(facts)) this.beginAnew(now_ms);
    if (isCounted) this.opened += 1;
    if (has("draw.refused")) this.refused += 1;
    return { facts, ended: isCounted ? "opened" : has("draw.refused") ? "refused" : null };
  }

  /**
   * Whether the lock has to be spun off before it can be dialed: where the first number is turned to in the way of the
   * draw, turning to it would only bring the bolt back.
   */
  get mustSpinOff(): boolean {
    const { procedure, draw, kind } = this.profile;
    const isThrown = this.attempt.opened && this.attempt.retraction === 0;
    return kind === "wheel-pack" && procedure[0]?.turn === draw.turn && isThrown;
  }

  /** Whether what follows is the next try: the bolt is out, and the lock spun off where it must be. */
  private isNextTry(facts: readonly DialingFact[]): boolean {
    return facts.some(({ type }) => type === (this.mustSpinOff ? "lock.cleared" : "bolt.thrown"));
  }

  /** Whether the hand dials although the spin-off was short: the wheels are out of line, and it turns to the first number. */
  private dialsAnyway(by: Graduations): boolean {
    const isFirstWay = turnOf(by) === this.profile.procedure[0]?.turn;
    return this.mustSpinOff && isFirstWay && this.attempt.pack?.isAligned() === false;
  }

  /** The bolt is out again: what follows is the next try. */
  private beginAnew(now_ms: Milliseconds | undefined): void {
    this.attempt = nextAttempt(this.attempt, this.meant, { setTo: this.setTo }, now_ms);
    this.hasCounted = false;
  }
}
