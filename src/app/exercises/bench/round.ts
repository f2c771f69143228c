import type { Attempt } from "../../../dialing/attempt";
import type { AttemptStart } from "../../../dialing/attemptStart";
import type { DialingFact } from "../../../dialing/dialingFact";
import { RecordedAttempt } from "../../../dialing/hand/recordedAttempt";
import { nextStart } from "../../../dialing/nextAttempt";
import { type Graduations, type Milliseconds, turnOf } from "../../../lock/dial";
import type { Outcome } from "../../replay/outcome";
import type { BenchSetup } from "./benchSetup";

/** How far off the worst stop was by one's own feeling, graduations without sign; or that it was not said. */
export type Estimate = Graduations | "skipped";

/** One lock under one hand: the attempt, what was recorded of it, and how it ended. */
export class Round extends RecordedAttempt {
  outcome: Outcome | null = null;
  /** Own estimate of the worst stop, graduations; null until it is given or skipped. */
  estimate: Estimate | null = null;

  constructor({ profile, combination }: BenchSetup, start: AttemptStart) {
    super(profile, combination, start);
  }
}

/** A rest longer than this is no mere change of grip, milliseconds. */
const REGRIP: Milliseconds = 1500;
/** Turning after the end of an attempt that begins the next one, part of a turn. */
const NEXT_AFTER = 1 / 4;

/**
 * The round that begins when the hand turns on after an end. What the hand does belongs to it, but the result stays in
 * sight until it is meant: until the dial has been turned about, or rested, and then turned on by a quarter turn.
 */
export class NextRound {
  readonly round: Round;
  /** What happened in it so far: the chart hears it once the round is meant. */
  readonly facts: DialingFact[];
  /** Whether it begins with the run that was under way when the attempt before it ended. */
  readonly takesRunOver: boolean;
  private readonly ended: Attempt;
  /** Where the dial stood when the hand first turned about or rested, graduations; null before that. */
  private meantFrom: Graduations | null = null;

  constructor(setup: BenchSetup, ended: Attempt, now: Milliseconds, rested: Milliseconds) {
    this.ended = ended;
    const { start, turned } = nextStart(ended, rested);
    this.round = new Round(setup, start);
    this.takesRunOver = turned.length > 0;
    this.facts = turned.flatMap((by) => [...this.round.turnBy(by, now)]);
  }

  /**
   * @param by - graduations; 0 for a rest
   * @param rested - how long the dial had stood still, milliseconds
   * @returns whether the round is meant now
   */
  turnBy(by: Graduations, now: Milliseconds, rested: Milliseconds): boolean {
    const { round } = this;
    const before = round.dial;
    this.facts.push(...round.turnBy(by, now));
    const goesOn = by === 0 || turnOf(by) === this.ended.reader.runs.at(-1)?.turn;
    if (rested > REGRIP || !goesOn) this.meantFrom ??= before;
    const nextAfter = this.ended.profile.graduations * NEXT_AFTER;
    return this.meantFrom !== null && Math.abs(round.dial - this.meantFrom) >= nextAfter;
  }
}
