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
import type { Counting } from "./learnedZero";

/** Sizes of the joints between a hand and what stands at the end of the train, graduations. */
export interface TrainSpec {
  /** How far the opening index stands off its true place, left positive. */
  readonly indexOffset: Graduations;
  /** Play between the dial and the cam. */
  readonly lostMotion: Graduations;
  /** Friction: how far the hand gets ahead before the dial moves; none where left out. */
  readonly drag?: Graduations;
  /** Where dial and cam stand before the hand takes hold, unwrapped. */
  readonly start: Graduations;
}

/** A joint of a train: what it drives, and the room in which that may stay behind. */
export interface Joint {
  readonly drives: "dial" | "cam";
  readonly play: Play;
}

/** The joints of a train in order, from the hand on: friction, then lost motion. The ring turns by itself and drives nothing. */
export const jointsOf = ({ drag = 0, lostMotion }: Omit<TrainSpec, "start" | "indexOffset">): readonly Joint[] => [
  { drives: "dial", play: lagging(drag) },
  { drives: "cam", play: { right: 0, left: lostMotion } },
];

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
 * The hand gets ahead of the dial by the friction, on either side. The cam stands at the dial's position turning left;
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
  private readonly joints: readonly Joint[];
  private hand: Graduations;
  private cam: CamPosition;

  constructor(spec: TrainSpec, perTurn: number) {
    this.spec = spec;
    this.joints = jointsOf(spec);
    this.perTurn = perTurn;
    this.hand = spec.start;
    this.dial = spec.start;
    this.cam = spec.start;
  }

  /** The same train in the same place, to try something on. */
  copy(): LockTrain {
    return Object.assign(new LockTrain(this.spec, this.perTurn), this);
  }

  /** Turns the dial by hand, as far as the cam. @param by - graduations, left positive */
  turnBy(by: Graduations): void {
    const before = this.cam;
    this.hand += by;
    let driver = this.hand;
    for (const { drives, play } of this.joints) {
      driver = driven(this[drives], driver, play);
      this[drives] = driver;
    }
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

  /** How far the index as drawn stands off its true place, graduations, left positive. */
  get indexError(): Graduations {
    return this.spec.indexOffset + this.ringTurn;
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
