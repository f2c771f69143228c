import type { Combination } from "../lock/combination";
import { type Graduations, type Milliseconds, signOf } from "../lock/dial";
import { exact } from "../lock/exact";
import type { Profile } from "../lock/profile";
import { type DialingFact, joinFacts, NO_FACTS } from "./dialingFact";
import { drawTooLong, isFirstRun, placeFacts, readFrom, restartFacts } from "./freshReading";
import { isHesitation, type Leg, newLeg, placeOf, type Target, targetsOf } from "./leg";
import { RestWatch } from "./restWatch";
import { type Run, RunFollower, runLength } from "./runs";

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
  /** What each number asks for, in dialing order. */
  readonly targets: readonly Target[];
  /** Length of a run that clears the lock and starts an attempt, graduations. */
  readonly freshLength: Graduations;
  /** Set once the attempt has ended: motion that follows makes runs, but no legs. */
  isClosed = false;
  private readonly rest: RestWatch;
  /** Where the dial rested when the lock forgot what was dialed, until the run under way ends; else null. */
  forgottenAt: Graduations | null = null;
  /** Whether the lock has forgotten a part of the attempt: nothing of it can be gone on with. */
  private hasForgotten = false;

  /** @param position - where the dial stands, graduations */
  constructor(profile: Profile, combination: Combination, position: Graduations) {
    this.profile = profile;
    this.follower = new RunFollower(position, profile.turnback);
    this.targets = targetsOf(profile, combination);
    this.freshLength = ((profile.procedure[0]?.arrivals ?? 1) - 1) * profile.graduations;
    this.rest = new RestWatch(profile, position);
  }

  /** Where the dial stands, graduations. */
  get position(): Graduations {
    return this.follower.position;
  }

  /** The leg under way, or undefined before the attempt has begun. */
  get leg(): Leg | undefined {
    return this.legs.at(-1);
  }

  /** What a leg's number asks for; undefined for the draw and beyond. */
  targetOf(leg: Leg): Target | undefined {
    return this.targets[leg.step];
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
    this.rest.turnAbout();
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
      this.rest.begin(run.to, now_ms);
    }
    return [{ type: "run.begun", turn: run.turn }];
  }

  private startFresh(run: Run, now_ms: Milliseconds | undefined): readonly DialingFact[] {
    if (isFirstRun(this) && this.forgottenAt === null) return NO_FACTS;
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
    this.rest.noteReturn(this, position, now_ms);
    if (!this.rest.isTooLong(this.leg, position, now_ms)) return facts;
    this.forgottenAt = position;
    this.hasForgotten = true;
    return [...facts, { type: "pause.exceeded" } as const];
  }
}
