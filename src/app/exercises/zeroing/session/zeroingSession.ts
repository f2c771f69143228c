import { type ActorRefFrom, createActor } from "xstate";
import type { DialWeight } from "../../../../dialing/hand/dialFeel";
import { HandSession } from "../../../../dialing/hand/handSession";
import type { Graduations, Milliseconds, Turn } from "../../../../lock/dial";
import type { Range } from "../../../../lock/profile";
import type { Chance } from "../../../../statistics/chance";
import { Approach } from "../../../../zeroing/approach";
import { clampRing, turnRing } from "../../../../zeroing/ringClamp";
import { type ReadingFact, takeReading } from "../../../../zeroing/takeReading";
import { askedSide, type ZeroingContext, type ZeroingState, zeroingMachine } from "../../../../zeroing/zeroingMachine";
import type { ZeroingRules } from "../../../../zeroing/zeroingRules";
import { type ConditionRanges, ZeroLock } from "../../../../zeroing/zeroLock";
import { HandStore } from "../../../hand/handStore";

/** What a zeroing exercise is set up for. */
export interface ZeroingSetup {
  readonly graduations: number;
  readonly rules: ZeroingRules;
  readonly ranges: ConditionRanges;
  /** How far the ring may creep while it is clamped. */
  readonly creep: Range;
  /** How the dial turns; as it should where left out. */
  readonly weight?: DialWeight | undefined;
}

/** Time and turning that a series has taken. */
export interface ZeroingEffort {
  readonly time_ms: Milliseconds;
  /** Turns of the dial, either way. */
  readonly turns: number;
}

/**
 * A zeroing exercise: a lock with hidden faults, the hand on its dial and ring, and the chart kept in step.
 *
 * A store outside React. It asks nobody for time or chance: both are handed in.
 */
export class ZeroingSession extends HandStore {
  readonly setup: ZeroingSetup;
  lock: ZeroLock;
  readonly chart: ActorRefFrom<ReturnType<typeof zeroingMachine>>;
  protected readonly hand: HandSession<ReadingFact>;
  private readonly chance: Chance;
  private approach: Approach;
  private begunAt: Milliseconds | null = null;
  private endedAt: Milliseconds | null = null;
  private turned: Graduations = 0;

  constructor(setup: ZeroingSetup, chance: Chance) {
    super();
    this.setup = setup;
    this.chance = chance;
    this.lock = ZeroLock.drawn(setup, chance);
    this.approach = new Approach(this.lock.dial);
    this.chart = createActor(zeroingMachine(setup.rules)).start();
    this.hand = this.takeDial();
  }

  get state(): ZeroingState {
    return this.chart.getSnapshot().value;
  }

  /** What the chart remembers: readings accepted, refusals, readings wanted, and the last one. */
  get memory(): ZeroingContext {
    return this.chart.getSnapshot().context;
  }

  /** The direction whose series is open, or null. */
  get asked(): Turn | null {
    return askedSide(this.state, this.setup.rules);
  }

  /** Time and turns used since the first motion. */
  effort(now: Milliseconds): ZeroingEffort {
    const time_ms = this.begunAt === null ? 0 : (this.endedAt ?? now) - this.begunAt;
    return { time_ms, turns: this.turned / this.setup.graduations };
  }

  /** Takes a reading: the hand says that the dial stands on zero. */
  takeReading(now: Milliseconds): void {
    const side = this.asked;
    if (side === null) return;
    const { lock, approach, chance } = this;
    this.hand.did([takeReading({ lock, approach, chance }, side, this.setup.rules, now)]);
    if (this.asked === null) this.endedAt = now;
    this.changed();
  }

  /** Turns the loose ring. @param by - graduations, left positive */
  turnRing(by: Graduations): void {
    if (this.state !== "ringLoose") return;
    this.lock.ringTurn = turnRing(this.lock.ringTurn, by);
    this.changed();
  }

  /** Clamps the ring, which creeps a little. */
  clampRing(): void {
    if (this.state !== "ringLoose") return;
    this.lock.ringTurn = clampRing(this.lock.ringTurn, this.chance, this.setup.creep);
    this.chart.send({ type: "ring.clamped" });
    this.changed();
  }

  loosenRing(): void {
    this.chart.send({ type: "ring.loosened" });
    this.forget();
  }

  /** Goes back to a side whose verdict is still open, for one more reading. */
  reopen(side: Turn): void {
    this.chart.send({ type: "series.reopened", side });
    this.endedAt = null;
    this.takeHold();
  }

  /** The hand takes hold anew: what the dial did in between belongs to no approach. */
  takeHold(): void {
    this.approach = new Approach(this.lock.dial);
    this.changed();
  }

  /** Empties the series under way. */
  restartSeries(): void {
    this.chart.send({ type: "series.restarted" });
    this.changed();
  }

  /** The same lock from the beginning. */
  again(): void {
    this.chart.send({ type: "zeroing.restarted" });
    this.lock.ringTurn = 0;
    this.forget();
  }

  /** Another lock. */
  newLock(): void {
    this.lock = ZeroLock.drawn(this.setup, this.chance);
    this.again();
  }

  private takeDial(): HandSession<ReadingFact> {
    const lock = () => this.lock;
    return new HandSession<ReadingFact>(
      {
        get dial() {
          return lock().dial;
        },
        turnBy: (by, at) => {
          if (by !== 0) this.moved(by, at);
          return [];
        },
      },
      { weight: this.setup.weight, chart: this.chart },
    );
  }

  /** The dial has moved, by whatever hand: a simulated one goes by a clock of its own. @param by - graduations, left positive */
  moved(by: Graduations, at: Milliseconds): void {
    this.begunAt ??= at;
    if (this.endedAt === null) this.turned += Math.abs(by);
    this.lock.turnBy(by);
    this.approach.moveTo(this.lock.dial, at);
  }

  private forget(): void {
    this.begunAt = null;
    this.endedAt = null;
    this.turned = 0;
    this.turnedBy.forget();
    this.takeHold();
  }
}
