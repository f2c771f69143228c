import { type ActorRefFrom, createActor } from "xstate";
import { Attempt } from "../../../dialing/attempt";
import { type DialFeel, dialFeel } from "../../../dialing/dialFeel";
import { type DialingState, dialingMachine } from "../../../dialing/dialingMachine";
import { faultsAtEnd } from "../../../dialing/fault";
import { hasRested } from "../../../dialing/rest";
import { spunOffStart } from "../../../dialing/spunOffStart";
import type { DialingTry as DialingResult } from "../../../drill/marking/tryResult";
import type { Graduations, Milliseconds } from "../../../lock/dial";
import { attemptOutcome } from "../../../records/attemptOutcome";
import { keptPosition } from "../../../records/motion/keptPosition";
import type { Motion } from "../../../records/motion/traceCodec";
import { ZeroLock } from "../../../zeroing/zeroLock";
import { wasHeld } from "../../hand/dial/wasHeld";
import { Store } from "../../parts/page/store";
import { AttemptRecorder } from "../../replay/attemptRecorder";
import type { TrySetup } from "./trySetup";

/** What keeping a position rounds away is less than this; more was held back by a positive stop, graduations. */
const KEPT: Graduations = 1 / 64;

/**
 * One try at dialing in a sitting: one lock, one combination, no second chance.
 *
 * It ends by itself when the bolt is back or the draw is refused, or when the candidate says so. After the end the
 * dial stands. A store outside React; it asks nobody for time or chance.
 */
export class DialingTry extends Store {
  readonly kind = "dialing";
  readonly setup: TrySetup;
  readonly attempt: Attempt;
  isEnded = false;
  private readonly hand: ZeroLock;
  private readonly feel: DialFeel;
  /** Where the dial would stand if positions were not rounded to be kept: small moves add up. */
  private meant: Graduations;
  private readonly recorder: AttemptRecorder;
  private readonly actor: ActorRefFrom<ReturnType<typeof dialingMachine>>;
  private lastMoved: Milliseconds | null = null;
  private clock: Milliseconds = 0;

  constructor(setup: TrySetup) {
    super();
    const { profile, plan, chance, conditions } = setup;
    const combination = plan.combination ?? [];
    const start = spunOffStart(profile, combination, chance);
    this.setup = setup;
    this.attempt = new Attempt(profile, combination, start);
    this.recorder = new AttemptRecorder(start);
    const { indexOffset, lostMotion, dial } = conditions;
    this.feel = dialFeel(dial);
    this.hand = new ZeroLock({ indexOffset, lostMotion, noise: 0, start: start.dial }, profile.graduations);
    this.meant = this.hand.dial;
    this.actor = createActor(dialingMachine(profile)).start();
  }

  get state(): DialingState {
    return this.actor.getSnapshot().value;
  }

  /** Index of the number being dialed. */
  get number(): number {
    return this.actor.getSnapshot().context.number;
  }

  get isBegun(): boolean {
    return this.lastMoved !== null;
  }

  /** Where the dial itself stands, unwrapped graduations. */
  get dial(): Graduations {
    return this.hand.dial;
  }

  /** How far the drawn index stands off its true place, graduations, left positive. */
  get indexError(): Graduations {
    return this.hand.indexError;
  }

  /** What the drawn index reads, unwrapped graduations. */
  get seen(): Graduations {
    return this.hand.seen;
  }

  /** What the lock took in, for a replay. */
  get motion(): Motion {
    return this.recorder.recording;
  }

  /** How far the hand is ahead of a heavy dial, graduations. */
  get windUp(): Graduations {
    return this.feel.windUp;
  }

  /** Whether a light dial moves by itself. */
  get isRunningOn(): boolean {
    return this.feel.isRunningOn && !this.isEnded;
  }

  /** The hand turns. @param by - graduations, left positive, one direction */
  turnBy(by: Graduations, at: Milliseconds): void {
    if (by === 0 || this.isEnded) return;
    const now = Math.max(at, this.clock);
    this.runOn(now);
    this.turnDial(this.feel.take(by, now), now);
    this.changed();
  }

  /** Lets time pass over a light dial that runs on. */
  runOn(at: Milliseconds): void {
    const now = Math.max(at, this.clock);
    const by = this.isEnded ? 0 : this.feel.runOn(now);
    if (by === 0) return;
    this.turnDial(by, now);
    this.changed();
  }

  /** Lets time pass over a resting hand: pauses run out, and coming back onto a number is noticed. */
  rest(now: Milliseconds): void {
    if (this.lastMoved === null || this.isEnded) return;
    this.clock = Math.max(now, this.clock);
    const facts = this.attempt.turnBy(0, this.clock);
    if (facts.length === 0) return;
    this.recorder.take(0, this.clock);
    this.heard(facts);
    this.changed();
  }

  /** The candidate says that the try is done. */
  end(): void {
    this.isEnded = true;
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
      time_ms: this.motion.times_ms?.at(-1) ?? 0,
      isBrokenOff: false,
    };
  }

  private turnDial(by: Graduations, now: Milliseconds): void {
    if (by === 0 || this.isEnded) return;
    if (hasRested(this.lastMoved, now)) this.take(0, now - 1);
    this.clock = now;
    this.lastMoved = now;
    const before = this.hand.dial;
    this.meant += by;
    this.hand.turnBy(keptPosition(this.meant) - before);
    this.take(this.hand.camPosition - this.attempt.dial, now);
    this.hand.holdBack(this.hand.camPosition - this.attempt.dial);
    if (wasHeld(by, this.hand.dial - before)) this.feel.halt();
    if (Math.abs(this.meant - this.hand.dial) > KEPT) this.meant = this.hand.dial;
  }

  private take(by: Graduations, now: Milliseconds): void {
    this.recorder.take(by, now);
    this.heard(this.attempt.turnBy(by, now));
  }

  private heard(facts: ReturnType<Attempt["turnBy"]>): void {
    for (const fact of facts) this.actor.send(fact);
    if (this.attempt.opened || this.state === "failed") this.isEnded = true;
  }
}
