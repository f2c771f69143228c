import type { Graduations, Turn } from "../../../lock/dial";
import { turnOf } from "../../../lock/dial";
import type { Chance } from "../../../statistics/chance";
import { markPlay, type PlayMark } from "../../../zeroing/playEstimate";
import { type ConditionRanges, drawCondition, ZeroLock } from "../../../zeroing/zeroLock";
import { Store } from "../../parts/page/store";

/** Stops from each side before an answer can be marked. */
export const STOPS_WANTED = 2;

/** How near its line the cam's mark must be for a stop to be kept, graduations. */
const NEAR: Graduations = 0.35;

/** Largest play that anyone may answer, graduations. */
export const MOST_PLAY: Graduations = 5;

/** "Find the play": a lock whose lost motion is to be found by stopping on the cam's mark from each side. */
export class PlaySession extends Store {
  lock: ZeroLock;
  stops: Readonly<Record<Turn, readonly Graduations[]>> = { right: [], left: [] };
  mark: PlayMark | null = null;
  /** Direction of the last motion, or null. */
  turn: Turn | null = null;
  /** Why the last stop was not kept, or null. */
  problem: string | null = null;
  private isKept = false;
  private readonly ranges: ConditionRanges;
  private readonly graduations: number;
  private readonly chance: Chance;

  constructor(ranges: ConditionRanges, graduations: number, chance: Chance) {
    super();
    this.ranges = ranges;
    this.graduations = graduations;
    this.chance = chance;
    this.lock = new ZeroLock(drawCondition(ranges, graduations, chance), graduations);
  }

  /** Whether there are stops enough to mark an answer. */
  get isReady(): boolean {
    return this.stops.right.length >= STOPS_WANTED && this.stops.left.length >= STOPS_WANTED;
  }

  turnBy(by: Graduations): void {
    if (by === 0) return;
    this.turn = turnOf(by);
    this.isKept = false;
    this.problem = null;
    this.lock.turnBy(by);
    this.changed();
  }

  /** Keeps where the dial stands, under the direction it was last turned in; or says why it is no stop. */
  keepStop(): void {
    if (this.turn === null || this.mark !== null) return;
    this.problem = this.whyNoStop(this.turn);
    if (this.problem === null) {
      this.stops = { ...this.stops, [this.turn]: [...this.stops[this.turn], this.lock.seen] };
      this.isKept = true;
    }
    this.changed();
  }

  private whyNoStop(turn: Turn): string | null {
    if (this.isKept) return "This stop is recorded already. Turn away and come onto the line again.";
    if (this.lock.camTurn !== turn) return `The cam has not moved yet: turn ${turn} until it does.`;
    if (Math.abs(this.lock.camDeviation) > NEAR) return "The cam's mark is not on its line.";
    return null;
  }

  /** Marks the trainee's own number. @param answer - graduations */
  answer(answer: Graduations): void {
    this.mark = markPlay(this.stops, this.graduations, answer, this.lock.condition.lostMotion);
    this.changed();
  }

  /** The same lock, from no stops at all. */
  again(): void {
    this.stops = { right: [], left: [] };
    this.mark = null;
    this.turn = null;
    this.changed();
  }

  /** Another lock. */
  newLock(): void {
    this.lock = new ZeroLock(drawCondition(this.ranges, this.graduations, this.chance), this.graduations);
    this.again();
  }
}
