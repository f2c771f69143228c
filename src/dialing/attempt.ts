import { type Combination, parseCombination } from "../lock/combination";
import { type Graduations, type Milliseconds, signOf } from "../lock/dial";
import { type EncoderMemory, FRESH_MEMORY, judgeDraw } from "../lock/dialEncoder";
import { exact } from "../lock/exact";
import type { DialEncoderProfile, Profile } from "../lock/profile";
import { spinOffRule } from "../lock/spinOffRule";
import type { TrainEnd } from "../lock/train/lockTrain";
import type { WheelPack } from "../lock/wheelPack";
import { checkReach } from "../lock/wheelPackState";
import { type AttemptStart, startPack } from "./attemptStart";
import { type DialingFact, joinFacts, NO_FACTS } from "./dialingFact";
import { drawPoint, type Forgotten, isDrawn, isSpelled } from "./drawReading";
import { HandReader } from "./handReader";
import { runLength } from "./runs";
import { type SpinOff, spinOffOf, type WheelAtOpening } from "./spinOff";

/** What telling a hand's progress and its faults needs of the lock under it; an `Attempt` has it all. */
export interface HandledLock
  extends Pick<Attempt, "profile" | "combination" | "reader" | "dial" | "opened" | "isCoupled" | "wheelErrors"> {
  /** The wheels' errors from where the dialed numbers are to stand, or null in an encoder lock. */
  readonly pack: Pick<WheelPack, "errors"> | null;
  /** How far it has been spun off; null or left out where there is nothing to spin off. */
  readonly spinOff?: SpinOff | null;
  /** What happened in it before it came under the hand, in order; left out where nothing did. */
  readonly begunWith?: readonly DialingFact[];
}

/**
 * One lock under one hand: the mechanics and the reading of the motion, kept together.
 *
 * Feed it what the hand does; it answers with what happened. Mutable; a motion event costs the same however long the
 * attempt.
 */
export class Attempt implements TrainEnd<DialingFact> {
  readonly profile: Profile;
  readonly combination: Combination;
  readonly reader: HandReader;
  /** The wheels, or null in an encoder lock. */
  readonly pack: WheelPack | null;
  /** An encoder lock's memory of tries. */
  memory: EncoderMemory;
  /** Whether the bolt has been retracted to the positive stop in this attempt. */
  opened = false;
  /** Whether an encoder lock refused a right entry because it still waited after wrong tries. */
  wasRefusedWaiting = false;
  /** Errors of the wheels when each leg of the attempt began, wheel 1 first; empty lists in an encoder lock. */
  readonly wheelErrors: Graduations[][] = [];
  /** What opens the lock. */
  private readonly setTo: Combination;
  /** Encoder locks: dial position at which the bolt began to come, graduations; null while it is thrown. */
  private boltFrom: Graduations | null = null;
  private errorsBefore: Graduations[] = [];
  /** Whether the bolt has been thrown again since it last came back. */
  isThrown = false;
  /** Whether the lock has been spun off since. */
  isSecured = false;
  /** The wheels as the bolt last came back, wheel 1 first; none in an encoder lock and before the first opening. */
  wheelsAtOpening: readonly WheelAtOpening[] = [];
  /** What the turn under way had brought already, where the attempt follows another without a break. */
  begunWith: readonly DialingFact[] = NO_FACTS;
  private isDrawJudged = false;
  /** Where an encoder lock last forgot what was dialed; null if never. */
  private forgotten: Forgotten | null = null;
  /** The run under way when a right entry was last judged, so that it is judged once. */
  private judgedRun = -1;

  /**
   * @param start - where the lock stands
   * @throws {LockError} for a combination or a start that cannot be
   */
  constructor(profile: Profile, combination: Combination, start: AttemptStart) {
    this.profile = profile;
    this.combination = parseCombination(profile, combination);
    this.memory = start.memory ?? FRESH_MEMORY;
    this.setTo = start.setTo === undefined ? this.combination : parseCombination(profile, start.setTo);
    this.pack = profile.kind === "wheel-pack" ? startPack(profile, this.setTo, start) : null;
    checkReach(start.dial);
    this.reader = new HandReader(profile, this.combination, start.dial);
  }

  /** Unwrapped dial position, graduations. */
  get dial(): Graduations {
    return this.reader.position;
  }

  /** How far the bolt is drawn back: 0 thrown, 1 retracted. */
  get retraction(): number {
    if (this.pack !== null) return this.pack.retraction;
    if (this.boltFrom === null) return 0;
    const drawn = exact((this.dial - this.boltFrom) * signOf(this.profile.draw.turn));
    return Math.min(1, Math.max(0, drawn / this.profile.draw.travel));
  }

  /** How far it has been spun off since its bolt was thrown; null while there is nothing to spin off. */
  get spinOff(): SpinOff | null {
    return spinOffOf(this);
  }

  /** Whether the lever nose is in the cam, or the encoder's bolt is coupled to the dial. */
  get isCoupled(): boolean {
    return this.pack === null ? this.boltFrom !== null : this.pack.engagedAt !== null;
  }

  /**
   * Turns the dial by hand.
   *
   * @param by - graduations, left positive, one direction; what a positive stop does not let through is lost
   * @param now_ms - time, or undefined where the motion has no times
   * @returns what happened, in order
   * @throws {LockError} `too-far`
   */
  turnBy(by: Graduations, now_ms?: Milliseconds): readonly DialingFact[] {
    const facts = this.pack === null ? this.turnEncoder(by, now_ms) : this.turnPack(this.pack, by, now_ms);
    const after = this.opened && this.isThrown ? joinFacts(facts, this.watchClearing()) : facts;
    return this.noteLegs(after);
  }

  private turnPack(pack: WheelPack, by: Graduations, now_ms: Milliseconds | undefined): readonly DialingFact[] {
    this.noteWheelsBefore(pack, by);
    const wasDown = pack.engagedAt !== null;
    const before = pack.retraction;
    pack.turnBy(by);
    const isDown = pack.engagedAt !== null;
    const facts = this.reader.moveTo(pack.dial, now_ms);
    if (before < 1 && pack.retraction === 1) return [...facts, ...this.open()];
    if (wasDown && !isDown && this.opened) return [...facts, ...this.throwBolt()];
    return isDown ? facts : joinFacts(facts, this.judgePackDraw(pack));
  }

  /** Says so once when the draw has been turned all its way and the nose has not dropped. */
  private judgePackDraw(pack: WheelPack): readonly DialingFact[] {
    return pack.engagedAt === null && !this.opened && isDrawn(this.reader) && this.judgeOnce()
      ? [{ type: "draw.refused" }]
      : NO_FACTS;
  }

  private turnEncoder(by: Graduations, now_ms: Milliseconds | undefined): readonly DialingFact[] {
    const target = exact(this.dial + by);
    checkReach(target);
    const sign = signOf(this.profile.draw.turn);
    if (this.boltFrom !== null) return this.turnCoupled(this.boltFrom, target, sign, now_ms);
    // The bolt couples within the move: stop there first, then let the rest of the move meet the positive stop.
    const point = drawPoint(this.profile, this.reader);
    const isSplit = point !== null && (point - this.dial) * sign > 0 && (target - point) * sign > 0;
    const first = this.moveAndJudge(isSplit ? point : target, now_ms);
    return isSplit ? [...first, ...this.turnEncoder(target - point, now_ms)] : first;
  }

  private moveAndJudge(position: Graduations, now_ms: Milliseconds | undefined): readonly DialingFact[] {
    const { profile, reader } = this;
    const facts = this.notePauses(reader.moveTo(position, now_ms));
    if (profile.kind !== "dial-encoder") return facts;
    if (this.isSpelled(profile)) return [...facts, ...this.judgeEncoderDraw(profile, true, now_ms)];
    // While the last number may yet be a new first one, its draw is judged once it is given up, and not before.
    const isOver = reader.restart === null ? isDrawn(this.reader) : false;
    if (!(isOver || reader.hasGivenUpDraw) || !this.judgeOnce()) return facts;
    // A draw given up in a turn long enough for a fresh start was answered before that.
    const fresh = facts.findIndex(({ type }) => type === "fresh.started");
    const before = fresh < 0 ? facts.length : fresh;
    return [...facts.slice(0, before), ...this.judgeEncoderDraw(profile, false, now_ms), ...facts.slice(before)];
  }

  /** Whether the run under way draws the bolt after runs that spell the combination. Said once. */
  private isSpelled(profile: DialEncoderProfile): boolean {
    const { reader, setTo, forgotten } = this;
    const under = reader.runs.length - 1;
    if (this.judgedRun === under || !isSpelled(profile, reader, setTo, forgotten)) return false;
    this.judgedRun = under;
    reader.beginWith(under - profile.procedure.length);
    this.judgeOnce();
    return true;
  }

  private judgeEncoderDraw(
    profile: DialEncoderProfile,
    isRight: boolean,
    now_ms: Milliseconds | undefined,
  ): readonly DialingFact[] {
    const { answer, memory } = judgeDraw(profile, this.memory, isRight, now_ms);
    this.memory = memory;
    this.wasRefusedWaiting = isRight && answer === "waiting";
    if (answer !== "opened") return [{ type: "draw.refused" }];
    const sign = signOf(profile.draw.turn);
    this.boltFrom = exact(this.dial - sign * profile.draw.travel);
    return this.open();
  }

  private turnCoupled(from: Graduations, target: number, sign: number, now_ms: Milliseconds | undefined) {
    const drawn = exact((target - from) * sign);
    const { travel, positiveStop } = this.profile.draw;
    if (drawn < 0) {
      this.boltFrom = null;
      return [...this.reader.moveTo(target, now_ms), ...this.throwBolt()];
    }
    return this.reader.moveTo(positiveStop && drawn > travel ? exact(from + sign * travel) : target, now_ms);
  }

  private judgeOnce(): boolean {
    const isFirst = !this.isDrawJudged;
    this.isDrawJudged = true;
    this.reader.judge();
    return isFirst;
  }

  private open(): readonly DialingFact[] {
    this.opened = true;
    this.isThrown = false;
    this.isSecured = false;
    const errors = this.pack?.errors() ?? [];
    this.wheelsAtOpening = (this.pack?.positions() ?? []).map((position, k) => ({ position, error: errors[k] ?? 0 }));
    this.reader.isClosed = true;
    return [{ type: "bolt.retracted" }];
  }

  private throwBolt(): readonly DialingFact[] {
    this.isThrown = true;
    return [{ type: "bolt.thrown" }];
  }

  private watchClearing(): readonly DialingFact[] {
    const run = this.reader.runs.at(-1);
    const { turns } = spinOffRule(this.profile);
    const isLong = run !== undefined && runLength(run) >= turns * this.profile.graduations;
    if (!isLong || this.isSecured) return NO_FACTS;
    this.isSecured = true;
    return [{ type: "lock.cleared" }];
  }

  private notePauses(facts: readonly DialingFact[]): readonly DialingFact[] {
    if (facts.length > 0 && facts.some((fact) => fact.type === "pause.exceeded")) {
      this.forgotten = { run: this.reader.runs.length - 1, at: this.dial };
    }
    return facts;
  }

  /** Keeps, for every leg, where the wheels stood when it began; a fresh start forgets the draw that was judged. */
  private noteLegs(facts: readonly DialingFact[]): readonly DialingFact[] {
    if (facts.length > 0 && facts.some((fact) => fact.type === "fresh.started")) this.isDrawJudged = false;
    const { length } = this.reader.legs;
    if (length < this.wheelErrors.length) this.wheelErrors.length = length;
    while (this.wheelErrors.length < length) this.wheelErrors.push(this.errorsBefore);
    return facts;
  }

  /** A move against the run may begin a leg: keep where the wheels stand before it carries any. */
  private noteWheelsBefore(pack: WheelPack, by: Graduations): void {
    const run = this.reader.runs.at(-1);
    if (run === undefined || signOf(run.turn) * by < 0) this.errorsBefore = pack.errors();
  }
}
