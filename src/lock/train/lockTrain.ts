import {
  type CamPosition,
  type Graduations,
  type Milliseconds,
  type Position,
  type Reading,
  type Turn,
  turnOf,
  wrap,
} from "../dial";
import { driven, lagging, type Play } from "../play";
import { type Catching, caught } from "./catching";
import type { Counting } from "./learnedZero";
import { type Runout, readsTooMuch } from "./runout";

/** Sizes of the joints between a hand and what stands at the end of the train, graduations. */
export interface TrainSpec {
  /** How far the opening index stands off its true place, left positive. */
  readonly indexOffset: Graduations;
  /** Play between the dial and the cam. */
  readonly lostMotion: Graduations;
  /** How far the cam stands off the dial it is keyed to, graduations, left positive; in line where left out. */
  readonly keyedOff?: Graduations;
  /** Friction: how far the hand gets ahead before the dial moves; none where left out. */
  readonly drag?: Graduations;
  /** What holds the dial once a turn; nothing where left out. */
  readonly catching?: Catching | undefined;
  /** How far the dial is off its axis; on it where left out. */
  readonly runout?: Runout;
  /** How much farther the hand gets ahead while the bolt moves (`heavyDraw`); nothing where left out. */
  readonly binding?: Graduations;
  /** Where dial and cam stand before the hand takes hold, unwrapped. */
  readonly start: Graduations;
}

/**
 * What stands at the end of a train, or behind another end: wheels, an encoder, a pack that a key may hold, a bolt that is
 * held back. It takes a move, gives it to what stands behind it, and what it held back shows in where it stands afterwards.
 */
export interface TrainEnd<Fact> {
  /** Where it takes the dial to be. */
  readonly dial: CamPosition;
  /** @param by - graduations, left positive, one direction; what it does not let through is lost. @returns what came of it */
  turnBy(by: Graduations, at?: Milliseconds): readonly Fact[];
}

/**
 * Hand, dial, ring with the opening index, and cam: each driven by the one before it, each by a play operator
 * (`lock/play`).
 *
 * The hand gets ahead of the dial by the friction, on either side. The cam stands at the dial's position turning left, or
 * off it by what they are keyed off;
 * turning right it stays behind by the whole lost motion, that is, farther left. The ring turns by itself. Mutable.
 */
export class LockTrain {
  readonly perTurn: number;
  dial: Position;
  /** How far the ring has been turned, graduations, left positive. */
  ringTurn: Graduations = 0;
  /** Direction the cam last moved in, or null: all that a lock knows of the way its dial is turned. */
  camTurn: Turn | null = null;
  /** What the lock behind the cam counts from; null where it goes with the cam. */
  counting: Counting | null = null;
  private readonly spec: TrainSpec;
  /** The room of the two joints: friction between hand and dial, and between dial and cam. */
  private readonly friction: Play;
  private readonly lostMotion: Play;
  protected hand: Graduations;
  private cam: CamPosition;

  constructor(spec: TrainSpec, perTurn: number) {
    this.spec = spec;
    this.friction = lagging(spec.drag ?? 0);
    this.lostMotion = { right: 0, left: spec.lostMotion };
    this.perTurn = perTurn;
    this.hand = spec.start;
    this.dial = spec.start;
    this.cam = spec.start + (spec.keyedOff ?? 0);
  }

  /** The same train in the same place, to try something on. */
  copy(): LockTrain {
    return Object.assign(new LockTrain(this.spec, this.perTurn), this);
  }

  /** Turns the dial by hand, as far as the cam. @param by - graduations, left positive */
  turnBy(by: Graduations): void {
    const before = this.cam;
    this.hand += by;
    this.dial = this.dragged();
    this.cam = driven(this.cam, this.dial + (this.spec.keyedOff ?? 0), this.lostMotion);
    if (this.cam !== before) this.camTurn = turnOf(this.cam - before);
  }

  /**
   * Turns the dial by hand, and with it what stands at the end. What that does not let through, nothing before it turns
   * either.
   *
   * @param by - graduations, left positive, one direction; 0 for a rest
   * @param at - time, or undefined for a motion without times
   * @returns what came of it at the end; nothing while friction holds the dial
   */
  drive<Fact>(end: TrainEnd<Fact>, by: Graduations, at?: Milliseconds): readonly Fact[] {
    const before = this.dial;
    this.turnBy(by);
    if (by !== 0 && this.dial === before) return [];
    const { taken } = this;
    const facts = end.turnBy(taken - end.dial, at);
    this.holdBack(taken - end.dial);
    return facts;
  }

  /** Takes back what a stop did not let through. @param by - graduations */
  holdBack(by: Graduations): void {
    this.hand -= by;
    this.dial -= by;
    this.cam -= by;
  }

  /** Takes the hand off the dial: what it was ahead is lost. */
  letGo(): void {
    this.hand = this.dial;
  }

  /** How far the hand is ahead of the dial, graduations, left positive. */
  get ahead(): Graduations {
    return this.hand - this.dial;
  }

  /**
   * Where the lock behind the cam takes the dial to be, unwrapped graduations. It goes by the way the cam last moved, not
   * the dial: while the play is taken up the cam stands still, and the lock knows nothing of it.
   */
  get taken(): CamPosition {
    const { counting, cam, camTurn } = this;
    return counting === null ? cam : cam - counting.zero[camTurn ?? counting.firstTurn];
  }

  get camPosition(): CamPosition {
    return this.cam;
  }

  /** Where the hand has turned the dial. */
  protected dragged(): Position {
    const { catching, drag = 0 } = this.spec;
    if (catching === undefined) return driven(this.dial, this.hand, this.friction);
    return caught(this.dial, this.hand, drag, catching, this.perTurn);
  }

  /** How far the index as drawn stands off its true place with the dial somewhere, graduations, left positive. */
  indexErrorAt(dial: Position): Graduations {
    const { indexOffset, runout } = this.spec;
    const off = indexOffset + this.ringTurn;
    return runout === undefined ? off : off - readsTooMuch(runout, dial, this.perTurn);
  }

  /** The same with the dial where it stands. */
  get indexError(): Graduations {
    return this.indexErrorAt(this.dial);
  }

  /** What the index as drawn reads, unwrapped. */
  get seen(): Reading {
    return this.dial - this.indexError;
  }

  /** How far the zero mark is from the index as drawn, graduations; positive where the dial stands left of zero. */
  get seenDeviation(): Graduations {
    return wrap(this.seen, this.perTurn);
  }

  /**
   * How far the mark on the cam is from its own line, graduations; positive where the cam stands left of it.
   *
   * The cutaway shows it: it moves only once the play is taken up.
   */
  get camDeviation(): Graduations {
    return wrap(this.cam, this.perTurn);
  }
}
