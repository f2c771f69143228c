import { type ActorRefFrom, createActor } from "xstate";
import { Attempt } from "../../../../dialing/attempt";
import type { DialingFact } from "../../../../dialing/dialingFact";
import { dialingMachine } from "../../../../dialing/dialingMachine";
import type { DialWeight } from "../../../../dialing/hand/dialFeel";
import { HandSession } from "../../../../dialing/hand/handSession";
import { trainUnderHand } from "../../../../dialing/hand/trainUnderHand";
import { stopError } from "../../../../dialing/runs";
import type { Combination } from "../../../../lock/combination";
import type { Graduations } from "../../../../lock/dial";
import type { Profile } from "../../../../lock/profile";
import { countingOf, type LearnedZero } from "../../../../lock/train/learnedZero";
import { fitShare, zeroShare } from "../../../../zeroing/learnedZero";
import type { ZeroLock } from "../../../../zeroing/zeroLock";
import { HandStore } from "../../../hand/handStore";

/** One stop, and where its error came from. Graduations along the turn. */
export interface StopShare {
  readonly number: Graduations;
  /** What the lock saw; positive ran past. */
  readonly total: Graduations;
  readonly fromZero: Graduations;
  readonly fromFit: Graduations;
  readonly fromHand: Graduations;
}

/** What is to be proved: a lock that has been zeroed, and what to dial on it. */
export interface ProveSpec {
  readonly lock: ZeroLock;
  readonly zero: LearnedZero;
  readonly profile: Profile;
  readonly combination: Combination;
  readonly weight?: DialWeight;
}

/**
 * The lock that has just been zeroed, dialed: it counts from the zeros it has learned, the hand goes by the index.
 *
 * A store outside React.
 */
export class ProveSession extends HandStore {
  readonly zero: LearnedZero;
  readonly lock: ZeroLock;
  readonly profile: Profile;
  readonly combination: Combination;
  attempt: Attempt;
  readonly chart: ActorRefFrom<ReturnType<typeof dialingMachine>>;
  protected readonly hand: HandSession<DialingFact>;

  constructor({ lock, zero, profile, combination, weight }: ProveSpec) {
    super();
    this.zero = zero;
    this.lock = lock;
    this.profile = profile;
    this.combination = combination;
    lock.counting = countingOf(profile, zero);
    this.attempt = this.newAttempt();
    this.chart = createActor(dialingMachine(profile)).start();
    this.hand = new HandSession<DialingFact>(
      trainUnderHand(lock, () => this.attempt),
      { weight, chart: this.chart },
    );
  }

  again(): void {
    this.attempt = this.newAttempt();
    this.chart.send({ type: "attempt.restarted" });
    this.changed();
  }

  /** Every stop made so far, and how much of its error came from the zero, from the fit of the dial, and from the hand. */
  shares(): StopShare[] {
    const { reader } = this.attempt;
    const closed = reader.legs.slice(0, Math.min(reader.legs.length - 1, this.combination.length));
    return closed.map((leg, k) => {
      const number = this.combination[k] ?? 0;
      const total = stopError(leg.turn, leg.to, number, this.profile.graduations);
      const fromZero = zeroShare(this.lock, this.zero, leg.turn);
      const fromFit = fitShare(this.lock, this.zero, leg.to, leg.turn);
      return { number, total, fromZero, fromFit, fromHand: total - fromZero - fromFit };
    });
  }

  private newAttempt(): Attempt {
    return new Attempt(this.profile, this.combination, { dial: this.lock.taken });
  }
}
