import { createActor } from "xstate";
import { type Graduations, type Milliseconds, opposite, signOf, type Turn } from "../../src/lock/dial";
import { Approach, type Refusal } from "../../src/zeroing/approach";
import { clampRing, turnRing } from "../../src/zeroing/ringClamp";
import { type ReadingFact, takeReading } from "../../src/zeroing/takeReading";
import {
  type ZeroingContext,
  type ZeroingEvent,
  type ZeroingState,
  zeroingMachine,
} from "../../src/zeroing/zeroingMachine";
import type { ZeroingRules } from "../../src/zeroing/zeroingRules";
import { type ZeroCondition, ZeroLock } from "../../src/zeroing/zeroLock";
import { seeded } from "./seeded";

/** A lock whose every number is a multiple of 1/64, so that nothing rounds. The ring always creeps by an eighth. */
export const EXACT: ZeroCondition = { indexOffset: 0.75, lostMotion: 0.5, noise: 0, start: 12.390625 };
const CREEP: Graduations = 0.125;
/** How far the index of the exact lock stands off once the ring is clamped. */
export const EXACT_INDEX_ERROR = EXACT.indexOffset + CREEP;
/** A stop too far off for any reading. */
export const FAR_OFF: Graduations = 3;
const MOVE: Milliseconds = 100;

/** Where a zeroing chart is. */
export interface ZeroingChartState {
  readonly value: ZeroingState;
  readonly context: ZeroingContext;
}

/** A lock under a planned hand, with a chart that hears only what comes of the hand's motions. */
export class ZeroBench {
  readonly lock: ZeroLock;
  readonly approach: Approach;
  readonly rules: ZeroingRules;
  private readonly chance = seeded(1);
  private readonly chart;
  private now_ms: Milliseconds = 0;

  constructor(rules: ZeroingRules, condition: ZeroCondition = EXACT, perTurn = 100) {
    this.rules = rules;
    this.lock = new ZeroLock(condition, perTurn);
    this.approach = new Approach(this.lock.dial);
    this.chart = createActor(zeroingMachine(rules)).start();
  }

  get state(): ZeroingChartState {
    const { value, context } = this.chart.getSnapshot();
    return { value, context };
  }

  /** The side whose series is open; the first where none is. */
  get asked(): Turn {
    return this.rules.order[this.state.value === "secondSeries" ? 1 : 0];
  }

  turn(by: Graduations): void {
    this.now_ms += MOVE;
    this.lock.turnBy(by);
    this.approach.moveTo(this.lock.dial, this.now_ms);
  }

  /** Turns one way, a third of a turn or more, until the index as drawn reads a deviation from zero. */
  turnOnto(turn: Turn, deviation: Graduations): void {
    const { perTurn, seen } = this.lock;
    const sign = signOf(turn);
    const way = (((sign * (deviation - seen)) % perTurn) + perTurn) % perTurn;
    this.turn(sign * (way < perTurn / 3 ? way + perTurn : way));
  }

  /** Rests, takes a reading, and lets the chart hear what came of it. */
  read(rest_ms: Milliseconds = this.rules.rest_ms): ReadingFact {
    this.now_ms += rest_ms;
    const { lock, approach, chance } = this;
    const fact = takeReading({ lock, approach, chance }, this.asked, this.rules, this.now_ms);
    this.chart.send(fact);
    return fact;
  }

  /** Makes an event of the chart happen, by a motion where it is a reading. */
  make(event: ZeroingEvent): void {
    if (event.type === "reading.accepted") {
      this.turnOnto(this.asked, event.reading.deviation);
      this.read();
    } else if (event.type === "reading.refused") this.miss(event.reason);
    else {
      if (event.type === "ring.clamped") this.clampStraight();
      this.chart.send(event);
    }
  }

  private clampStraight(): void {
    const straight = turnRing(this.lock.ringTurn, -this.lock.ringTurn);
    this.lock.ringTurn = clampRing(straight, this.chance, [CREEP, CREEP]);
  }

  private miss(reason: Refusal): void {
    MISSES[reason](this, this.asked);
    this.read(reason === "not-at-rest" ? this.rules.rest_ms / 2 : this.rules.rest_ms);
  }
}

/** What a hand does to have its reading refused for each reason. */
const MISSES: Readonly<Record<Refusal, (bench: ZeroBench, asked: Turn) => void>> = {
  "not-at-rest": (bench, asked) => bench.turnOnto(asked, 0),
  // It has not moved since the reading before.
  "same-stop": () => {},
  "wrong-way": (bench, asked) => bench.turnOnto(opposite(asked), 0),
  "came-back": (bench, asked) => {
    bench.turnOnto(asked, 2 * signOf(asked));
    bench.turn(-2 * signOf(asked));
  },
  "too-short": (bench, asked) => {
    bench.turnOnto(opposite(asked), -10 * signOf(asked));
    bench.turn(10 * signOf(asked));
  },
  "off-the-mark": (bench, asked) => bench.turnOnto(asked, FAR_OFF),
};
