import { type ActorRefFrom, createActor } from "xstate";
import type { Attempt } from "../../../dialing/attempt";
import type { DialingFact } from "../../../dialing/dialingFact";
import { type DialingState, dialingMachine } from "../../../dialing/dialingMachine";
import { faultsAtEnd } from "../../../dialing/fault";
import { HandSession } from "../../../dialing/hand/handSession";
import { RecordedAttempt } from "../../../dialing/hand/recordedAttempt";
import { trainUnderHand } from "../../../dialing/hand/trainUnderHand";
import type { Motion } from "../../../dialing/motion";
import { spunOffStart } from "../../../dialing/spunOffStart";
import type { DialingTry as DialingResult } from "../../../drill/marking/tryResult";
import type { Graduations, Position, Reading } from "../../../lock/dial";
import { LockTrain } from "../../../lock/train/lockTrain";
import { attemptOutcome } from "../../../records/attemptOutcome";
import { HandStore } from "../../hand/handStore";
import type { TrySetup } from "./trySetup";

/**
 * One try at dialing in a sitting: one lock, one combination, no second chance.
 *
 * It ends by itself when the bolt is back or the draw is refused, or when the candidate says so. After the end the
 * dial stands. A store outside React; it asks nobody for time or chance.
 */
export class DialingTry extends HandStore {
  readonly kind = "dialing";
  readonly setup: TrySetup;
  protected readonly hand: HandSession<DialingFact>;
  private readonly train: LockTrain;
  private isGivenUp = false;
  private readonly recorded: RecordedAttempt;
  /** What its screen selects from. */
  readonly chart: ActorRefFrom<ReturnType<typeof dialingMachine>>;

  constructor(setup: TrySetup) {
    super();
    const { profile, plan, chance, conditions } = setup;
    const combination = plan.combination ?? [];
    const start = spunOffStart(profile, combination, chance);
    this.setup = setup;
    this.recorded = new RecordedAttempt(profile, combination, start);
    this.train = new LockTrain({ ...conditions, start: start.dial }, profile.graduations);
    this.chart = createActor(dialingMachine(profile)).start();
    this.hand = new HandSession<DialingFact>(
      trainUnderHand(this.train, () => this.recorded),
      { weight: conditions.dial, chart: this.chart, isClosed: () => this.isEnded },
    );
  }

  get attempt(): Attempt {
    return this.recorded.attempt;
  }

  get state(): DialingState {
    return this.chart.getSnapshot().value;
  }

  /** Index of the number being dialed. */
  get number(): number {
    return this.chart.getSnapshot().context.number;
  }

  /** Whether the lock has answered, or the candidate has said that it is done. */
  get isEnded(): boolean {
    return this.isGivenUp || this.chart.getSnapshot().hasTag("answered");
  }

  get isBegun(): boolean {
    return this.hand.hasMoved;
  }

  /** Where the dial itself stands, unwrapped graduations. */
  get dial(): Position {
    return this.train.dial;
  }

  /** How far the drawn index stands off its true place, graduations, left positive. */
  get indexError(): Graduations {
    return this.train.indexError;
  }

  /** What the drawn index reads, unwrapped graduations. */
  get seen(): Reading {
    return this.train.seen;
  }

  /** What the lock took in, for a replay. */
  get motion(): Motion {
    return this.recorded.recording;
  }

  /** The candidate says that the try is done. */
  end(): void {
    this.isGivenUp = true;
    this.changed();
  }

  /** What it came to. */
  result(): DialingResult {
    const { attempt, setup } = this;
    const { opened, stops } = attemptOutcome(attempt);
    const { station, repetition } = setup.plan;
    return {
      kind: "dialing",
      station,
      repetition,
      combination: attempt.combination,
      opened,
      stopErrors: attempt.combination.map((_, k) => stops.findLast(({ step }) => step === k + 1)?.error ?? null),
      faults: faultsAtEnd(attempt).map(({ code, number, size }) => ({ code, number, size })),
      time_ms: this.recorded.time_ms,
      isBrokenOff: false,
      ...this.turnedBy.forRecord,
      ...(this.setup.begunAgain > 0 && { begunAgain: this.setup.begunAgain }),
    };
  }
}
