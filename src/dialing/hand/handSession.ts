import type { Graduations, Milliseconds, Position } from "../../lock/dial";
import { type DialFeel, type DialWeight, dialFeel } from "./dialFeel";
import { hasRested } from "./rest";

/** Whatever a hand can turn: a pack, an encoder, a whole train with ring and cam, a lock on a door. */
export interface UnderHand<Fact> {
  readonly dial: Position;
  /**
   * Turns the dial.
   *
   * @param by - graduations, left positive, one direction; what a stop does not let through is lost. 0 turns nothing: time
   *   has passed over a resting dial, or its rest has just ended. It comes many times in a rest, however short the rest
   * @param at - never before the move before it
   * @returns what came of it, in order
   */
  turnBy(by: Graduations, at: Milliseconds): readonly Fact[];
  /** Lets time pass over a resting dial; left out where `turnBy` by 0 does. `turnBy` still hears the end of the rest. */
  rest?(at: Milliseconds): readonly Fact[];
}

/** What a hand brings to a lock. */
export interface HandSpec<Fact> {
  /** How the dial turns; as it should where left out. */
  readonly weight?: DialWeight | undefined;
  /** The chart that is kept in step: it hears every fact, before anyone else does, and leaves alone what it does not know. */
  readonly chart?: { send(fact: Fact): void };
  /** Whether the dial does not turn now; it always does where left out. */
  readonly isClosed?: () => boolean;
  /** Told of every move and of every fact that time alone has brought. @param by - of the dial, graduations; 0 for a rest */
  readonly heard?: (facts: readonly Fact[], by: Graduations, at: Milliseconds) => void;
}

/** A move is kept in steps of a 64th, so it may come out shorter by that without anything in its way, graduations. */
const ROUNDING: Graduations = 1 / 32;

/** A dial that runs on is moved at least so often, however late one looks: less than a rest, milliseconds. */
const RUN_ON_STEP: Milliseconds = 50;

/**
 * One hand at one dial: time that never runs back, rests, and the weight of the dial.
 *
 * It knows no exercise and asks nobody for the time. Mutable.
 */
export class HandSession<Fact> {
  /** When the dial moved last, milliseconds; null where it has not yet. */
  private lastMoved: Milliseconds | null = null;
  private readonly lock: UnderHand<Fact>;
  private readonly spec: HandSpec<Fact>;
  private readonly feel: DialFeel;
  /** Latest time seen. */
  private clock: Milliseconds = Number.NEGATIVE_INFINITY;

  constructor(lock: UnderHand<Fact>, spec: HandSpec<Fact> = {}) {
    this.lock = lock;
    this.spec = spec;
    this.feel = dialFeel(spec.weight ?? "usual");
  }

  /** How far the hand is ahead of a heavy dial, graduations. */
  get windUp(): Graduations {
    return this.feel.windUp;
  }

  /** Whether a light dial moves by itself. */
  get isRunningOn(): boolean {
    return this.feel.isRunningOn && !this.isClosed;
  }

  /** Whether the dial has moved at all. */
  get hasMoved(): boolean {
    return this.lastMoved !== null;
  }

  /**
   * How long the dial has stood where it is, milliseconds; 0 before its first move.
   *
   * For an exercise that waits for a stop: ask for longer than the gap between two keys, and take no stop of a dial that
   * `isRunningOn`.
   */
  stoodFor(at: Milliseconds): Milliseconds {
    return this.lastMoved === null ? 0 : at - this.lastMoved;
  }

  /**
   * The hand turns; what the dial does of it depends on its weight.
   *
   * @param by - graduations, left positive, one direction
   * @param at - milliseconds of a steady clock
   * @returns whether there was anything to turn
   */
  turnBy(by: Graduations, at: Milliseconds): boolean {
    if (by === 0 || this.isClosed) return false;
    this.runOn(at);
    this.turnDial(this.feel.take(by, this.clock), this.clock);
    return true;
  }

  /** Moves the dial as a recording has it, whose rests are moves by 0. Times are those of the recording. */
  play(by: Graduations, at: Milliseconds): void {
    this.move(by, this.passed(at));
  }

  /** Lets time pass over a light dial that runs on. @returns whether it moved */
  runOn(at: Milliseconds): boolean {
    const before = this.lastMoved;
    while (this.isRunningOn && this.clock < at) {
      this.clock = Math.min(at, this.clock + RUN_ON_STEP);
      this.turnDial(this.feel.runOn(this.clock), this.clock);
    }
    this.passed(at);
    return this.lastMoved !== before;
  }

  /**
   * Lets time pass over a resting hand: pauses run out, and coming back onto a number is noticed. The page asks every fifth
   * of a second, whether the hand rests or turns. A dial that runs on does not rest.
   *
   * @returns whether anything came of it
   */
  rest(at: Milliseconds): boolean {
    if (this.lastMoved === null || this.isClosed || this.feel.isRunningOn) return false;
    const now = this.passed(at);
    const facts = this.lock.rest === undefined ? this.lock.turnBy(0, now) : this.lock.rest(now);
    if (facts.length > 0) this.tell(facts, 0, now);
    return facts.length > 0;
  }

  /** The hand has done something besides turning: moved a key, taken a reading. @param facts - what came of it, in order */
  did(facts: readonly Fact[]): void {
    for (const fact of facts) this.spec.chart?.send(fact);
  }

  private get isClosed(): boolean {
    return this.spec.isClosed?.() ?? false;
  }

  /** An event's own time may lie a little before the clock that watched the rest. */
  private passed(at: Milliseconds): Milliseconds {
    this.clock = Math.max(at, this.clock);
    return this.clock;
  }

  private turnDial(by: Graduations, now: Milliseconds): void {
    if (by === 0 || this.isClosed) return;
    if (hasRested(this.lastMoved, now)) this.move(0, now - 1);
    const before = this.lock.dial;
    this.move(by, now);
    this.lastMoved = now;
    const wasHeld = Math.abs(this.lock.dial - before) < Math.abs(by) - ROUNDING;
    if (wasHeld) this.feel.halt();
  }

  private move(by: Graduations, now: Milliseconds): void {
    this.tell(this.lock.turnBy(by, now), by, now);
  }

  private tell(facts: readonly Fact[], by: Graduations, at: Milliseconds): void {
    this.did(facts);
    this.spec.heard?.(facts, by, at);
  }
}

/** A hand, whatever it turns. */
export type Hand = Pick<HandSession<never>, "windUp" | "isRunningOn" | "turnBy" | "runOn" | "rest">;
