import { faultsAtEnd } from "../../dialing/fault";
import { idealMotion } from "../../dialing/idealMotion";
import { explain } from "../../drill/combinations/combinationRules";
import { TRAINING_SIZES } from "../../fitting/fittingSizes";
import { faceOf, readingError } from "../../fitting/offCenter";
import { type Graduations, type Milliseconds, opposite, reading, signOf, type Turn, wrap } from "../../lock/dial";
import type { Chance } from "../../statistics/chance";
import { drawNormal } from "../../statistics/drawNormal";
import { type InsideOfTry, insideOf } from "./inside";
import type {
  CamObservation,
  MarksObservation,
  Observation,
  PullObservation,
  PushObservation,
  RoundObservation,
  RulesObservation,
  TryObservation,
} from "./observation";
import type { TroubleTask } from "./trouble";
import { TroubleLock } from "./troubleLock";
import type { TroubleEvent } from "./troubleMachine";

/** Farthest that a number may be dialed off on this bench, graduations: it proves a known number, it seeks none. */
export const MOST_OFF: Graduations = 6;
/** Longest rest that the steady hand keeps, seconds. */
export const LONGEST_REST = 40;

/** Spread of what a gauge reads, graduations; it shows tenths. Training values. */
const GAUGE_SPREAD: Graduations = 0.04;
/** Spread of an eye on a mark with a line through the axis, graduations, and of a dial gauge, millimeters. Training values. */
const EYE: Graduations = 0.03;
const PLAY_SPREAD_mm = 0.01;
/** Where the four marks of a ring are, parts of a turn clockwise from the top. */
const MARKS = [0, 0.25, 0.5, 0.75] as const;
/** Step by which the dial is turned all round, graduations. */
const ROUND_STEP: Graduations = 0.25;
/** How far the steady hand pulls beyond where the bolt should be back, graduations: further than any index slips. */
const OVERDRAW: Graduations = 8;
/** Step by which the pull gauge winds up, graduations. */
const PULL_STEP: Graduations = 0.02;
/** Most that the pull gauge can show, graduations. */
const PULL_END: Graduations = 10;
/** How long the steady hand takes for a move. */
const MOVE: Milliseconds = 800;

/** The chart of the exercise, as the bench tells it what was seen. */
interface TroubleChart {
  send(seen: TroubleEvent): void;
}

const TURNED_WRONG = ["wrong-way", "too-few-turns", "too-many-turns", "extra-turnback"] as const;

/** A lock in trouble, the instruments to look at it with, and all that they showed. Mutable. */
export class TroubleBench {
  readonly lock: TroubleLock;
  /** Everything seen so far, in order. */
  readonly log: Observation[] = [];
  /** What the lock made of each try of the log, in order: not for the trainee before the condition is told. */
  readonly insides: InsideOfTry[] = [];
  private readonly chance: Chance;
  private readonly chart: TroubleChart | undefined;
  private clock: Milliseconds = 0;

  /**
   * @param chance - source of the spread of the gauges, and of where the dial stands
   * @param chart - hears of everything seen
   */
  constructor(task: TroubleTask, chance: Chance, chart?: TroubleChart) {
    this.chance = chance;
    this.chart = chart;
    this.lock = new TroubleLock(task, Math.floor(chance() * task.card.profile.graduations));
  }

  /**
   * The trainee's own hand moves the dial; the end of a try is put into the log.
   *
   * @param by - graduations, left positive
   */
  turnBy(by: Graduations, at_ms: Milliseconds): void {
    const { lock } = this;
    const now = Math.max(at_ms, this.clock + 1);
    lock.rest(now - 1);
    this.clock = now;
    const wasOver = lock.end !== null;
    lock.turnHandBy(by, now);
    if (lock.end !== null && !wasOver) this.noteTry("own hand", null);
  }

  /**
   * The steady hand dials the numbers exactly, each off by a chosen amount, and draws.
   *
   * @param off - graduations for each number, left positive, clamped to `MOST_OFF` either way
   * @param rest_s - rest before the last number, seconds, clamped to `LONGEST_REST`
   */
  dial(off: readonly Graduations[], rest_s = 0): TryObservation {
    const { lock } = this;
    const { profile, combination } = lock.card;
    lock.beginTry();
    lock.letGo();
    const numbers = combination.map((number, k) => reading(number + clamp(off[k] ?? 0, MOST_OFF), profile.graduations));
    // Begun well away from the first number: where the lock sees it elsewhere, it could take the start for an arrival less.
    const from = lock.seen + (signOf(profile.procedure[0]?.turn ?? "left") * profile.graduations) / 4;
    const [, ...path] = idealMotion(profile, numbers, from, [], OVERDRAW);
    path.forEach((position, k) => {
      if (k === combination.length - 1) this.wait(1000 * clamp(rest_s, LONGEST_REST));
      this.moveTo(position);
    });
    return this.noteTry("steady hand", rest_s);
  }

  /** Reads the cam where the index reads zero, after more than a turn one way. */
  readCam(turn: Turn): CamObservation {
    const { lock } = this;
    this.spinOff();
    const perTurn = lock.card.profile.graduations;
    const sign = signOf(turn);
    this.moveTo(sign * perTurn * (Math.ceil((lock.seen * sign) / perTurn) + 1));
    return this.note({ kind: "cam", turn, value: this.gauge(lock.cam - lock.seen) });
  }

  /** Winds the hand up from rest until the dial moves. */
  pull(turn: Turn): PullObservation {
    const { lock } = this;
    this.spinOff();
    lock.letGo();
    const from = lock.dial;
    let hand = 0;
    while (lock.dial === from && hand < PULL_END) {
      hand += PULL_STEP;
      lock.turnHandBy(signOf(turn) * PULL_STEP, this.clock);
    }
    lock.letGo();
    return this.note({ kind: "pull", turn, value: Math.max(0, this.gauge(hand - PULL_STEP)) });
  }

  /** Turns the dial all round, a hair at a time, with the hand ahead of it. */
  turnRound(): RoundObservation {
    const { lock } = this;
    this.spinOff();
    const { draw, graduations } = lock.card.profile;
    const step = signOf(opposite(draw.turn)) * ROUND_STEP;
    const ahead: Graduations[] = [];
    for (let turned = 0; turned < 2 * graduations; turned += ROUND_STEP) {
      lock.turnHandBy(step, this.clock);
      // The first turn takes up what rest there was.
      if (turned >= graduations) ahead.push(Math.abs(lock.ahead));
    }
    lock.letGo();
    const gauged = (value: Graduations) => Math.max(0, this.gauge(value));
    const { scrapes } = lock.mechanics;
    return this.note({
      kind: "turn-round",
      least: gauged(Math.min(...ahead)),
      most: gauged(Math.max(...ahead)),
      scrapes,
    });
  }

  /** Pushes and pulls the dial against a gauge. */
  pushPull(): PushObservation {
    const moves = drawNormal(this.chance, this.lock.mechanics.endPlay_mm, PLAY_SPREAD_mm);
    return this.note({ kind: "push-pull", moves_mm: Math.max(0, Math.round(moves * 100) / 100) });
  }

  /** Reads the four marks of the ring. */
  readMarks(): MarksObservation {
    const { ringOff, ringTurned, profile } = this.lock.mechanics;
    const perTurn = profile.graduations;
    const face = faceOf(perTurn, TRAINING_SIZES.markRadius_mm, ringOff);
    const values = MARKS.map((part) => readingError(face, part * perTurn, 0) - ringTurned);
    return this.note({
      kind: "marks",
      values: values.map((value) => Math.round(drawNormal(this.chance, value, EYE) * 100) / 100 + 0),
    });
  }

  /** Holds the written numbers against the rules of the lock. */
  holdAgainstRules(): RulesObservation {
    const { combination, profile } = this.lock.card;
    const broken = explain(combination, profile.combinationRules, profile.graduations);
    return this.note({ kind: "rules", broken });
  }

  /** Turns all wheels along against the draw, so that the bolt is thrown and the nose up. */
  private spinOff(): void {
    const { lock } = this;
    const { draw, graduations, procedure } = lock.card.profile;
    lock.beginTry();
    this.moveTo(lock.seen + signOf(opposite(draw.turn)) * graduations * (procedure.length + 1));
  }

  private moveTo(position: Graduations): void {
    this.clock += MOVE;
    this.lock.bringTo(position, this.clock);
  }

  private wait(time: Milliseconds): void {
    this.clock += time;
    this.lock.rest(this.clock);
  }

  private gauge(value: Graduations): Graduations {
    return Math.round(drawNormal(this.chance, value, GAUGE_SPREAD) * 10) / 10 + 0;
  }

  private noteTry(by: TryObservation["by"], rest_s: number | null): TryObservation {
    this.insides.push(insideOf(this.lock.attempt));
    return this.note(this.tryMade(by, rest_s));
  }

  private note<Seen extends Observation>(seen: Seen): Seen {
    this.log.push(seen);
    this.chart?.send({ type: seen.kind === "try" ? "try.made" : "measurement.made" });
    return seen;
  }

  private tryMade(by: TryObservation["by"], rest_s: number | null): TryObservation {
    const { card, byIndex, end } = this.lock;
    const { combination, profile } = card;
    const stops = byIndex.reader.legs.slice(0, combination.length).map(({ to }) => to);
    const faults = faultsAtEnd({ profile, combination, reader: byIndex.reader, opened: true });
    return {
      kind: "try",
      by,
      stops: stops.map((stop) => reading(stop, profile.graduations)),
      off: stops.map((stop, k) => wrap(stop - (combination[k] ?? 0), profile.graduations)),
      rest_s,
      isTurnedRight: !faults.some(({ code }) => TURNED_WRONG.some((one) => one === code)),
      opened: end === "opened",
    };
  }
}

const clamp = (value: number, most: number) => Math.max(-most, Math.min(most, value));
