import { type ActorRefFrom, createActor } from "xstate";
import { Attempt } from "../../../dialing/attempt";
import { type DialingState, dialingMachine } from "../../../dialing/dialingMachine";
import { stopError } from "../../../dialing/runs";
import type { Combination } from "../../../lock/combination";
import type { Graduations, Milliseconds } from "../../../lock/dial";
import type { Profile } from "../../../lock/profile";
import { type LearnedZero, takenPosition, zeroShare } from "../../../zeroing/learnedZero";
import type { ZeroLock } from "../../../zeroing/zeroLock";
import { Store } from "../../parts/page/store";

/** One stop, and where its error came from. Graduations along the turn. */
export interface StopShare {
  readonly number: Graduations;
  /** What the lock saw; positive ran past. */
  readonly total: Graduations;
  readonly fromZero: Graduations;
  readonly fromHand: Graduations;
}

/**
 * The lock that has just been zeroed, dialed: it counts from the zeros it has learned, the hand goes by the index.
 *
 * A store outside React.
 */
export class ProveSession extends Store {
  readonly zero: LearnedZero;
  readonly lock: ZeroLock;
  readonly profile: Profile;
  readonly combination: Combination;
  attempt: Attempt;
  actor: ActorRefFrom<ReturnType<typeof dialingMachine>>;

  constructor(lock: ZeroLock, zero: LearnedZero, profile: Profile, combination: Combination) {
    super();
    this.lock = lock;
    this.zero = zero;
    this.profile = profile;
    this.combination = combination;
    this.attempt = this.newAttempt();
    this.actor = createActor(dialingMachine(profile)).start();
  }

  get state(): DialingState {
    return this.actor.getSnapshot().value;
  }

  /** Turns the dial. What the positive stop does not let through, the dial does not turn either. */
  turnBy(by: Graduations, now: Milliseconds): void {
    if (by === 0) return;
    this.lock.turnBy(by);
    const taken = this.taken();
    const facts = this.attempt.turnBy(taken - this.attempt.dial, now);
    this.lock.holdBack(taken - this.attempt.dial);
    for (const fact of facts) this.actor.send(fact);
    this.changed();
  }

  again(): void {
    this.attempt = this.newAttempt();
    this.actor.send({ type: "attempt.restarted" });
    this.changed();
  }

  /** Every stop made so far, and how much of its error came from the zero and how much from the hand. */
  shares(): StopShare[] {
    const { reader } = this.attempt;
    const closed = reader.legs.slice(0, Math.min(reader.legs.length - 1, this.combination.length));
    return closed.map((leg, k) => {
      const number = this.combination[k] ?? 0;
      const total = stopError(leg.turn, leg.to, number, this.profile.graduations);
      const fromZero = zeroShare(this.lock, this.zero, leg.turn);
      return { number, total, fromZero, fromHand: total - fromZero };
    });
  }

  /** Where the lock takes the dial to be. It knows the cam alone: trembling inside the play changes nothing. */
  private taken(): Graduations {
    const turn = this.lock.camTurn ?? this.profile.procedure[0]?.turn ?? "left";
    return takenPosition(this.lock.camPosition, this.zero, turn);
  }

  private newAttempt(): Attempt {
    return new Attempt(this.profile, this.combination, { dial: this.taken() });
  }
}
