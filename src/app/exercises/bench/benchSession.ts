import { type ActorRefFrom, createActor } from "xstate";
import type { Attempt } from "../../../dialing/attempt";
import type { AttemptStart } from "../../../dialing/attemptStart";
import { type DialFeel, dialFeel } from "../../../dialing/dialFeel";
import type { DialingFact } from "../../../dialing/dialingFact";
import { type DialingState, dialingMachine } from "../../../dialing/dialingMachine";
import { tellFaultsSoFar, type WordedFault } from "../../../dialing/faultWords";
import { hasRested } from "../../../dialing/rest";
import { spunOffStart } from "../../../dialing/spunOffStart";
import { drawCombination } from "../../../drill/drawCombination";
import { type Graduations, type Milliseconds, turnOf } from "../../../lock/dial";
import type { Chance } from "../../../statistics/chance";
import { wasHeld } from "../../hand/dial/wasHeld";
import { Store } from "../../parts/page/store";
import type { Recording } from "../../replay/attemptRecorder";
import { type Outcome, outcomeOf } from "../../replay/outcome";
import { type BenchSetup, combinationAsSet } from "./benchSetup";
import { type Estimate, type NextRound, newRound, type Round, startAfter, turn } from "./round";

/** What a move brought, for whoever makes sounds of it. */
export type FactListener = (facts: readonly DialingFact[], by: Graduations, dial: Graduations) => void;

/** A rest longer than this is no mere change of grip, milliseconds. */
const REGRIP: Milliseconds = 1500;
/** Turning after the end of an attempt that begins the next one, part of a turn. */
const NEXT_AFTER = 1 / 4;

const OVER: readonly DialingState[] = ["failed", "secured"];

/**
 * The bench: sets locks up, feeds them what the hand does, and keeps the dialing chart in step.
 *
 * A store outside React: `subscribe` and `version` are for `useSyncExternalStore`. It asks nobody for the time or for
 * chance: both are handed in.
 */
export class BenchSession extends Store {
  setup: BenchSetup;
  actor: ActorRefFrom<ReturnType<typeof dialingMachine>>;
  private feel: DialFeel;
  private round: Round;
  /** The round that begins when the hand turns on after an end; it becomes the round once it is meant. */
  private next: NextRound | null = null;
  private readonly chance: Chance;
  private readonly factListeners = new Set<FactListener>();
  private lastMoved: Milliseconds | null = null;
  /** Latest time seen. */
  private clock: Milliseconds = 0;

  constructor(setup: BenchSetup, chance: Chance) {
    super();
    this.setup = setup;
    this.chance = chance;
    this.feel = dialFeel(setup.dial);
    this.round = newRound(setup, spunOffStart(setup.profile, setup.combination, chance));
    this.actor = createActor(dialingMachine(setup.profile)).start();
  }

  readonly onFacts = (listener: FactListener): (() => void) => {
    this.factListeners.add(listener);
    return () => this.factListeners.delete(listener);
  };

  /** The attempt that is shown: the one under way, or the one that has just ended. */
  get attempt(): Attempt {
    return this.round.attempt;
  }

  /** The lock as it stands under the hand now. */
  get lock(): Attempt {
    return this.next?.round.attempt ?? this.round.attempt;
  }

  /** How the shown attempt ended; null while it is under way. */
  get outcome(): Outcome | null {
    return this.round.outcome;
  }

  /** Own estimate of the shown attempt's worst stop; null until it is given or skipped. */
  get estimate(): Estimate | null {
    return this.round.estimate;
  }

  get recording(): Recording {
    return this.round.recorder.recording;
  }

  get state(): DialingState {
    return this.actor.getSnapshot().value;
  }

  /** Faults to tell now: those behind the hand, or all of them once the attempt has ended. */
  faults(): readonly WordedFault[] {
    return this.round.outcome?.faults ?? tellFaultsSoFar(this.round.attempt);
  }

  /** How far the hand is ahead of a heavy dial, graduations. */
  get windUp(): Graduations {
    return this.feel.windUp;
  }

  /** Whether a light dial moves by itself. */
  get isRunningOn(): boolean {
    return this.feel.isRunningOn;
  }

  /**
   * The hand turns; what the dial does of it depends on its weight.
   *
   * @param by - graduations, left positive, one direction
   * @param at - milliseconds of a steady clock
   */
  turnBy(by: Graduations, at: Milliseconds): void {
    if (by === 0) return;
    // An event's own time may lie a little before the clock that watched the rest.
    const now = Math.max(at, this.clock);
    this.runOn(now);
    this.turnDial(this.feel.take(by, now), now);
    this.changed();
  }

  /** Lets time pass over a light dial that runs on. */
  runOn(at: Milliseconds): void {
    const now = Math.max(at, this.clock);
    const by = this.feel.runOn(now);
    if (by === 0) return;
    this.turnDial(by, now);
    this.changed();
  }

  /** Lets time pass over a resting hand: pauses run out, and coming back onto a number is noticed. */
  rest(now: Milliseconds): void {
    const { attempt, recorder } = this.round;
    if (this.lastMoved === null || this.round.outcome !== null || this.next !== null) return;
    this.clock = Math.max(now, this.clock);
    const facts = attempt.turnBy(0, now);
    if (facts.length === 0) return;
    recorder.take(0, now);
    this.take(facts, 0);
    this.changed();
  }

  /** Takes the own estimate of an attempt that has ended. */
  giveEstimate(estimate: Estimate): void {
    if (this.round.outcome === null || this.round.estimate !== null) return;
    this.round.estimate = estimate;
    this.changed();
  }

  /** The same combination again, the lock spun off. An encoder lock still remembers its wrong tries. */
  again(): void {
    this.begin({ ...this.spunOff(), memory: this.lock.memory });
  }

  /** A new combination by the lock's rules, the lock spun off. */
  drawAnother(): void {
    const combination = drawCombination(this.setup.profile, this.chance);
    this.change({ ...this.setup, source: "drawn", combination });
  }

  /** Another lock, with its combination as set or drawn. */
  takeLock(profile: BenchSetup["profile"], wanted: "as-set" | "drawn"): void {
    const source = profile.asSet === undefined ? "drawn" : wanted;
    const combination =
      source === "as-set" ? combinationAsSet(profile, this.chance) : drawCombination(profile, this.chance);
    this.change({ ...this.setup, profile, source, combination });
  }

  /** Sets the bench up anew. Only a change of help leaves the attempt under way alone. */
  change(setup: BenchSetup): void {
    const { profile, combination, dial } = this.setup;
    const isSameProfile = setup.profile === profile;
    const isSameLock = isSameProfile && setup.combination === combination && setup.dial === dial;
    this.setup = setup;
    if (isSameLock) {
      this.changed();
      return;
    }
    if (!isSameProfile) {
      this.actor.stop();
      this.actor = createActor(dialingMachine(setup.profile)).start();
    }
    this.begin(this.spunOff());
  }

  private begin(start: AttemptStart): void {
    this.round = newRound(this.setup, start);
    this.feel = dialFeel(this.setup.dial);
    this.next = null;
    this.lastMoved = null;
    this.actor.send({ type: "attempt.restarted" });
    this.changed();
  }

  private turnDial(by: Graduations, now: Milliseconds): void {
    if (by === 0) return;
    this.clock = now;
    const rested = this.lastMoved === null ? 0 : now - this.lastMoved;
    if (hasRested(this.lastMoved, now)) this.move(0, now - 1);
    if (rested > REGRIP && this.next !== null) this.next.meantFrom ??= this.lock.dial;
    this.lastMoved = now;
    const before = this.lock.dial;
    this.move(by, now);
    if (wasHeld(by, this.lock.dial - before)) this.feel.halt();
  }

  private move(by: Graduations, now: Milliseconds): void {
    const isOver = OVER.includes(this.state) && !this.round.attempt.isCoupled;
    if (isOver || this.next !== null) this.moveNext(by, now);
    else this.take(turn(this.round, by, now), by);
  }

  private take(facts: readonly DialingFact[], by: Graduations): void {
    for (const fact of facts) this.actor.send(fact);
    this.noteOutcome(facts);
    for (const listener of this.factListeners) listener(facts, by, this.lock.dial);
  }

  private noteOutcome(facts: readonly DialingFact[]): void {
    const { attempt, recorder, outcome } = this.round;
    const hasOpened = facts.some(({ type }) => type === "bolt.retracted");
    const isNews = hasOpened ? outcome?.opened !== true : outcome === null && this.state === "failed";
    if (!isNews) return;
    this.round.outcome = outcomeOf(attempt, recorder.recording.times_ms.at(-1) ?? 0);
  }

  private spunOff(): AttemptStart {
    return spunOffStart(this.setup.profile, this.setup.combination, this.chance);
  }

  /**
   * The hand turns on after an end. What it does belongs to the next attempt, but the result stays in sight until that
   * attempt is meant: until the dial has been turned about, or rested, and then turned on by a quarter turn.
   */
  private moveNext(by: Graduations, now: Milliseconds): void {
    this.next ??= { round: newRound(this.setup, startAfter(this.round.attempt)), facts: [], meantFrom: null };
    const { round, facts } = this.next;
    const before = round.attempt.dial;
    facts.push(...turn(round, by, now));
    for (const listener of this.factListeners) listener([], by, round.attempt.dial);
    const goesOn = by === 0 || turnOf(by) === this.round.attempt.reader.runs.at(-1)?.turn;
    if (!goesOn) this.next.meantFrom ??= before;
    const { meantFrom } = this.next;
    const nextAfter = this.setup.profile.graduations * NEXT_AFTER;
    const isMeant = meantFrom !== null && Math.abs(round.attempt.dial - meantFrom) >= nextAfter;
    if (!isMeant) return;
    this.round = round;
    this.next = null;
    this.actor.send({ type: "attempt.restarted" });
    this.take(facts, 0);
  }
}
