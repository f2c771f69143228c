import type { Combination } from "../lock/combination";
import { type Graduations, type Milliseconds, signOf } from "../lock/dial";
import { exact } from "../lock/exact";
import type { Profile } from "../lock/profile";
import { type DialingFact, joinFacts, NO_FACTS } from "./dialingFact";
import { drawTooLong, placeFacts, readFrom, restartFacts } from "./freshReading";
import { isHesitation, type Leg, legArrivals, newLeg, placeOf, type Target } from "./leg";
import { type Run, RunFollower, runLength, stopError } from "./runs";

/** Rest on a number after running past it that counts as having come back to it, milliseconds. */
const CAME_BACK_REST: Milliseconds = 300;
/** Drift within which the hand counts as resting, graduations. */
const REST_DRIFT: Graduations = 0.25;

/**
 * Reads a hand: cuts the motion of the dial into runs, and the runs into the legs of an attempt.
 *
 * Incremental: a motion event costs the same however long the attempt. It knows no lock, only the procedure and the
 * numbers. Mutable; reading the fields is free.
 */
export class HandReader {
  readonly profile: Profile;
  /** Every run of the trace so far, the one under way last. */
  readonly runs: Run[] = [];
  /** The legs of the attempt since its fresh start; empty before it. */
  legs: Leg[] = [];
  /** Length of a first run made the wrong way, graduations; 0 if there was none. */
  wrongWay: Graduations = 0;
  /** Whether a draw that was turned all its way has been given up before it was too long to be one. */
  hasGivenUpDraw = false;
  /**
   * Encoder locks: the run that goes round again at a later number and may as well be a new first number, as an index of
   * `runs`; null where there is none.
   */
  restart: number | null = null;
  private readonly follower: RunFollower;
  private readonly targets: readonly Target[];
  /** Length of a run that clears the lock and starts an attempt, graduations. */
  private readonly freshLength: Graduations;
  private isClosed = false;
  private restAnchor: Graduations;
  private restSince: Milliseconds | undefined;
  /** How long the hand rested where it rests, when that was last looked at, milliseconds. */
  private rested: Milliseconds = 0;
  private backSince: Milliseconds | undefined;
  /** Where the dial rested when the lock forgot what was dialed, until the run under way ends; else null. */
  private forgottenAt: Graduations | null = null;
  /** Whether the lock has forgotten a part of the attempt: nothing of it can be gone on with. */
  private hasForgotten = false;

  /** @param position - where the dial stands, graduations */
  constructor(profile: Profile, combination: Combination, position: Graduations) {
    this.profile = profile;
    this.follower = new RunFollower(position, profile.turnback);
    this.targets = profile.procedure.map((step, k) => ({
      step,
      number: combination[k] ?? 0,
      perTurn: profile.graduations,
      tolerance: profile.stopTolerance,
    }));
    this.freshLength = ((profile.procedure[0]?.arrivals ?? 1) - 1) * profile.graduations;
    this.restAnchor = position;
  }

  /** Where the dial stands, graduations. */
  get position(): Graduations {
    return this.follower.position;
  }

  /** The leg under way, or undefined before the attempt has begun. */
  get leg(): Leg | undefined {
    return this.legs.at(-1);
  }

  /**
   * The attempt under way, read as if it had begun with the latest turn in the first direction; null where it did.
   * What a hand means that starts over after a mistake.
   */
  asStartedOver(): Pick<HandReader, "legs" | "leg" | "targetOf"> | null {
    const { leg, runs, targets } = this;
    const first = this.profile.procedure[0]?.turn;
    const isAgain = leg !== undefined && leg.step > 0 && leg.step < targets.length && leg.turn === first;
    const index = this.restart ?? (isAgain ? leg.lastRun : null);
    if (index === null) return null;
    const legs = readFrom(this.legs, runs, index, targets);
    return { legs, leg: legs.at(-1), targetOf: (one) => targets[one.step] };
  }

  /** What a leg's number asks for; undefined for the draw and beyond. */
  targetOf(leg: Leg): Target | undefined {
    return this.targets[leg.step];
  }

  /** Ends the attempt: motion that follows makes runs, but no legs. */
  close(): void {
    this.isClosed = true;
  }

  /** The draw under way has been turned all its way, and the lock has answered. */
  judge(): void {
    const { leg } = this;
    this.hasGivenUpDraw = false;
    if (leg !== undefined) leg.isJudged = true;
  }

  /**
   * Reads the attempt as begun with a run, for the lock has shown that it did.
   *
   * @param index - of `runs`
   */
  beginWith(index: number): void {
    if (this.legs[0]?.firstRun === index) return;
    this.legs = readFrom(this.legs, this.runs, index, this.targets);
    this.restart = null;
    this.wrongWay = 0;
  }

  /**
   * Takes in one motion event.
   *
   * @param position - where the dial stands now, graduations, after a move in one direction
   * @param now_ms - its time, or undefined where the motion has no times
   * @returns what happened, in order
   */
  moveTo(position: Graduations, now_ms: Milliseconds | undefined): readonly DialingFact[] {
    const change = this.follower.moveTo(position);
    const { current } = this.follower;
    if (current !== null && change !== "none") {
      this.runs[change === "begun" ? this.runs.length : this.runs.length - 1] = current;
    }
    if (this.isClosed) return NO_FACTS;
    const facts = current === null || change === "none" ? NO_FACTS : this.follow(current, change === "begun", now_ms);
    return now_ms === undefined ? facts : this.watchTheClock(facts, position, now_ms);
  }

  private follow(run: Run, isNew: boolean, now_ms: Milliseconds | undefined): readonly DialingFact[] {
    const turned = isNew ? this.begin(run, now_ms) : NO_FACTS;
    const left = this.leaveDraw(run);
    const started = this.startFresh(run, now_ms);
    const grown = this.grow(run);
    return joinFacts(joinFacts(joinFacts(turned, left), joinFacts(started, grown)), this.readAnew());
  }

  /** A turn after the last number that is too long for a draw: the run before it was a new first number after all. */
  private readAnew(): readonly DialingFact[] {
    const { leg, restart } = this;
    if (leg === undefined || restart === null || !this.isDrawing(leg)) return NO_FACTS;
    if (runLength(leg) <= drawTooLong(this.profile)) return NO_FACTS;
    this.beginWith(restart);
    return restartFacts(this.legs);
  }

  /** Whether a leg is a draw that has not been judged yet. */
  private isDrawing(leg: Leg): boolean {
    return leg.step === this.profile.procedure.length && !leg.isJudged;
  }

  /** Turning back in the draw leaves it only where the dial is back at the last number's stop: then no wheel has moved. */
  private leaveDraw(run: Run): readonly DialingFact[] {
    const { leg } = this;
    const before = this.legs.at(-2);
    if (leg === undefined || before === undefined || !this.isDrawing(leg) || run.turn === leg.turn) return NO_FACTS;
    const isBack = signOf(run.turn) * (run.to - before.to) >= 0;
    // On the way back from a long draw the turn may have cleared the lock first, however large the move that shows it.
    return isBack && !this.isFresh({ ...run, to: before.to }) ? this.resume(before, leg) : NO_FACTS;
  }

  /** A new run: the first of an attempt, a reversal, or the end of a hesitation. */
  private begin(run: Run, now_ms: Milliseconds | undefined): readonly DialingFact[] {
    this.forgottenAt = null;
    const { leg } = this;
    if (leg === undefined) return this.beginAttempt(run, now_ms);
    this.hasGivenUpDraw = this.isGivenUp(leg, run);
    if (this.hasGivenUpDraw) this.restart = null;
    if (this.isDrawing(leg) && !this.hasGivenUpDraw) {
      leg.lastRun = this.runs.length - 1;
      const turnback = this.runs.at(-2);
      if (run.turn === leg.turn && turnback !== undefined) leg.turnbacks.push(runLength(turnback));
      return NO_FACTS;
    }
    const before = this.legs.at(-2);
    return before !== undefined && this.isHesitating ? this.resume(before, leg) : this.turnAbout(leg, run, now_ms);
  }

  /** Whether a hand turns back from a draw that was long enough, and would have been judged but for what it may be else. */
  private isGivenUp(leg: Leg, run: Run): boolean {
    const isFull = runLength(leg) >= exact(this.profile.draw.travel);
    return this.restart !== null && this.isDrawing(leg) && isFull && run.turn !== leg.turn;
  }

  /** Whether the leg under way is so far only a short turnback in the one before it. */
  get isHesitating(): boolean {
    const { leg } = this;
    const { length } = this.profile.procedure;
    if (leg === undefined || this.legs.length < 2 || leg.step >= length) return false;
    return isHesitation(leg, this.targetOf(leg), this.profile.graduations);
  }

  /** The turnback is over: the leg before it goes on. */
  private resume(before: Leg, turnback: Leg): readonly DialingFact[] {
    this.legs.pop();
    before.turnbacks.push(runLength(turnback), ...turnback.turnbacks);
    before.lastRun = this.runs.length - 1;
    before.longestRest = Math.max(before.longestRest, turnback.longestRest);
    return [{ type: "turn.resumed", place: before.place }];
  }

  /** The leg ends at its furthest point, and the next one begins. */
  private turnAbout(leg: Leg, run: Run, now_ms: Milliseconds | undefined): readonly DialingFact[] {
    leg.endedAt = now_ms;
    this.backSince = undefined;
    // What follows the draw is one leg, however often the hand turns about in it.
    const isAfter = leg.step > this.profile.procedure.length;
    if (isAfter) this.legs.pop();
    this.legs.push(newLeg(isAfter ? leg.step : leg.step + 1, run, this.runs.length - 1, now_ms));
    return [{ type: "turn.reversed" }];
  }

  private beginAttempt(run: Run, now_ms: Milliseconds | undefined): readonly DialingFact[] {
    if (run.turn === this.profile.procedure[0]?.turn) {
      const before = this.runs.at(-2);
      this.wrongWay = before !== undefined && runLength(before) >= this.freshLength ? runLength(before) : 0;
      this.legs = [newLeg(0, run, this.runs.length - 1, now_ms)];
      // A rest before the first motion is nobody's pause.
      this.restAnchor = run.to;
      this.restSince = now_ms;
    }
    return [{ type: "run.begun", turn: run.turn }];
  }

  private startFresh(run: Run, now_ms: Milliseconds | undefined): readonly DialingFact[] {
    const isUnderWay = this.legs.length === 1 && this.legs[0]?.firstRun === this.runs.length - 1;
    if (isUnderWay && this.forgottenAt === null) return NO_FACTS;
    // What was turned before the lock forgot does not clear it.
    const fresh: Run = this.forgottenAt === null ? run : { ...run, from: this.forgottenAt };
    if (!this.isFresh(fresh)) return NO_FACTS;
    if (this.mayGoRound()) {
      this.restart ??= this.runs.length - 1;
      return NO_FACTS;
    }
    this.wrongWay = 0;
    this.forgottenAt = null;
    this.hasForgotten = false;
    this.restart = null;
    this.legs = [newLeg(0, fresh, this.runs.length - 1, now_ms)];
    return [{ type: "fresh.started" }];
  }

  /** Whether a run clears the lock. */
  private isFresh(run: Run): boolean {
    return run.turn === this.profile.procedure[0]?.turn && runLength(run) >= this.freshLength;
  }

  /** Whether a long run in the first direction may only be going round again at the number under way. */
  private mayGoRound(): boolean {
    const { leg, profile } = this;
    const isLater = leg !== undefined && leg.step > 0 && leg.step < profile.procedure.length;
    return profile.kind === "dial-encoder" && isLater && !this.hasForgotten;
  }

  /** Carries the leg's furthest point along, and says when its number comes and goes. */
  private grow(run: Run): readonly DialingFact[] {
    const { leg } = this;
    if (leg === undefined || run.turn !== leg.turn || signOf(run.turn) * (run.to - leg.to) <= 0) return NO_FACTS;
    leg.to = run.to;
    leg.cameBack = false;
    const target = this.targetOf(leg);
    if (target === undefined) return NO_FACTS;
    const before = leg.place;
    leg.place = placeOf(leg, target);
    return placeFacts(before, leg.place);
  }

  private watchTheClock(facts: readonly DialingFact[], position: Graduations, now_ms: Milliseconds) {
    this.watchReturn(position, now_ms);
    return this.watchRest(position, now_ms) ? [...facts, { type: "pause.exceeded" } as const] : facts;
  }

  /** Whether this very event makes the rest in the leg under way longer than the lock waits. */
  private watchRest(position: Graduations, now_ms: Milliseconds): boolean {
    if (this.restSince === undefined || Math.abs(exact(position - this.restAnchor)) > REST_DRIFT) {
      this.restAnchor = position;
      this.restSince = now_ms;
      this.rested = 0;
    }
    const { leg, rested: before } = this;
    if (leg === undefined) return false;
    this.rested = now_ms - this.restSince;
    leg.longestRest = Math.max(leg.longestRest, this.rested);
    const limit_ms = restLimit(this.profile);
    const isTooLong = before <= limit_ms && this.rested > limit_ms;
    if (isTooLong) this.forgottenAt = position;
    this.hasForgotten ||= isTooLong;
    return isTooLong;
  }

  /** Notes a hand that ran past its number, came back and rests on it. */
  private watchReturn(position: Graduations, now_ms: Milliseconds): void {
    const leg = this.legBackOnNumber(position);
    if (leg === undefined) {
      this.backSince = undefined;
      return;
    }
    this.backSince ??= now_ms;
    if (now_ms - this.backSince >= CAME_BACK_REST) leg.cameBack = true;
  }

  /** The leg under way, or the one before it, where the dial is back on the number that it ran past. */
  private legBackOnNumber(position: Graduations): Leg | undefined {
    const { leg } = this;
    if (leg === undefined || this.isBackOnNumber(leg, position)) return leg;
    const before = this.legs.at(-2);
    return before !== undefined && this.isBackOnNumber(before, position) ? before : undefined;
  }

  /** Whether a leg ran past its number and the dial is back on the mark it ran past. */
  private isBackOnNumber(leg: Leg, position: Graduations): boolean {
    const target = this.targetOf(leg);
    if (target === undefined) return false;
    const past = stopError(leg.turn, leg.to, target.number, target.perTurn);
    if (past <= target.tolerance) return false;
    const mark = exact(leg.to - signOf(leg.turn) * past);
    return Math.abs(exact(position - mark)) <= target.tolerance && legArrivals(leg, target) > 0;
  }
}

/** Longest rest that a lock takes, milliseconds; infinite where it takes any. */
export function restLimit(profile: Profile): Milliseconds {
  return profile.kind === "dial-encoder" && profile.pauseLimit_s !== undefined ? profile.pauseLimit_s * 1000 : Infinity;
}
