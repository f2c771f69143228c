import { type ActorRefFrom, createActor } from "xstate";
import type { Attempt } from "../../../dialing/attempt";
import type { AttemptStart } from "../../../dialing/attemptStart";
import type { DialingFact } from "../../../dialing/dialingFact";
import { type DialingState, dialingMachine } from "../../../dialing/dialingMachine";
import { tellFaultsSoFar, type WordedFault } from "../../../dialing/faultWords";
import { HandSession } from "../../../dialing/hand/handSession";
import { trainUnderHand } from "../../../dialing/hand/trainUnderHand";
import type { TimedMotion } from "../../../dialing/motion";
import { spunOffStart } from "../../../dialing/spunOffStart";
import { drawCombination } from "../../../drill/combinations/drawCombination";
import { judgedFaults } from "../../../drill/marking/coarseStep";
import type { Graduations, Milliseconds, Position } from "../../../lock/dial";
import { LockTrain } from "../../../lock/train/lockTrain";
import type { Chance } from "../../../statistics/chance";
import { HandStore } from "../../hand/handStore";
import { type Outcome, outcomeOf } from "../../replay/outcome";
import { type BenchSetup, combinationAsSet } from "./benchSetup";
import { type Estimate, NextRound, Round } from "./round";

/**
 * The bench: sets locks up, feeds them what the hand does, and keeps the dialing chart in step.
 *
 * A store outside React: `subscribe` and `version` are for `useSyncExternalStore`. It asks nobody for the time or for
 * chance: both are handed in.
 */
export class BenchSession extends HandStore {
  setup: BenchSetup;
  chart: ActorRefFrom<ReturnType<typeof dialingMachine>>;
  protected hand: HandSession<DialingFact>;
  private round: Round;
  /** The round that begins when the hand turns on after an end; it becomes the round once it is meant. */
  private next: NextRound | null = null;
  /** Ring and cam, where they are not both true. */
  private train: LockTrain | null = null;
  private readonly chance: Chance;

  constructor(setup: BenchSetup, chance: Chance) {
    super();
    this.setup = setup;
    this.chance = chance;
    this.round = new Round(setup, this.spunOff());
    this.chart = this.newChart();
    this.hand = this.takeHold();
  }

  /** The attempt that is shown: the one under way, or the one that has just ended. */
  get attempt(): Attempt {
    return this.round.attempt;
  }

  /** The lock as it stands under the hand now. */
  get lock(): Attempt {
    return this.next?.round.attempt ?? this.round.attempt;
  }

  /** Where the dial itself stands, unwrapped graduations: not where the lock is, if the cam follows it with play. */
  get dial(): Position {
    return this.train?.dial ?? this.lock.dial;
  }

  /** How far the opening index stands off its true place, graduations, left positive. */
  get indexError(): Graduations {
    return this.train?.indexError ?? 0;
  }

  /** How the shown attempt ended; null while it is under way. */
  get outcome(): Outcome | null {
    return this.round.outcome;
  }

  /** Own estimate of the shown attempt's worst stop; null until it is given or skipped. */
  get estimate(): Estimate | null {
    return this.round.estimate;
  }

  get recording(): TimedMotion {
    return this.round.recording;
  }

  get state(): DialingState {
    return this.chart.getSnapshot().value;
  }

  /** Faults to tell now: those behind the hand, or all of them once the attempt has ended. */
  faults(): readonly WordedFault[] {
    const { attempt, outcome } = this.round;
    return outcome?.faults ?? judgedFaults(tellFaultsSoFar(attempt), this.turnedBy.forRecord.sources);
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
      this.chart.stop();
      this.chart = this.newChart();
    }
    this.begin(this.spunOff());
  }

  private begin(start: AttemptStart): void {
    this.round = new Round(this.setup, start);
    this.turnedBy.forget();
    this.next = null;
    this.chart.send({ type: "attempt.restarted" });
    this.hand = this.takeHold();
    this.changed();
  }

  private newChart(): typeof this.chart {
    const chart = createActor(dialingMachine(this.setup.profile)).start();
    chart.on("attempt.ended", ({ opened }) => {
      const { round } = this;
      if (round.outcome === null || opened)
        round.outcome = outcomeOf(round.attempt, round.time_ms, this.turnedBy.forRecord);
    });
    return chart;
  }

  private takeHold(): HandSession<DialingFact> {
    const { setup, chart } = this;
    const lock = () => this.lock;
    const end = {
      get dial(): Graduations {
        return lock().dial;
      },
      turnBy: (by: Graduations, at: Milliseconds) => this.move(by, at),
      rest: (at: Milliseconds) => (this.round.outcome === null && this.next === null ? this.round.rest(at) : []),
    };
    const { fit, profile } = setup;
    this.train = fit === undefined ? null : new LockTrain({ ...fit, start: this.lock.dial }, profile.graduations);
    const turned = this.train === null ? end : trainUnderHand(this.train, () => end);
    return new HandSession<DialingFact>(turned, { weight: setup.dial, chart });
  }

  private move(by: Graduations, at: Milliseconds): readonly DialingFact[] {
    const isOver = this.chart.getSnapshot().hasTag("over") && !this.round.attempt.isCoupled;
    if (isOver || this.next !== null) return this.moveNext(by, at);
    const { runs } = this.round.attempt.reader;
    const before = runs.length;
    const facts = this.round.turnBy(by, at);
    // The run under way as an attempt ends may be made again as the beginning of the next one.
    if (runs.length > before) this.turnedBy.mayGoOn();
    return facts;
  }

  private moveNext(by: Graduations, at: Milliseconds): readonly DialingFact[] {
    const rested = this.hand.stoodFor(at);
    if (this.next === null) {
      this.next = new NextRound(this.setup, this.round.attempt, at, rested);
      if (!this.next.takesRunOver) this.turnedBy.mayGoOn();
    }
    const { round, facts } = this.next;
    if (!this.next.turnBy(by, at, rested)) return [];
    this.round = round;
    this.turnedBy.goOn();
    this.next = null;
    this.chart.send({ type: "attempt.restarted" });
    return facts;
  }

  private spunOff(): AttemptStart {
    return spunOffStart(this.setup.profile, this.setup.combination, this.chance);
  }
}
