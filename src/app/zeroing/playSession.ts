import type { Graduations, Turn } from "../../lock/dial";
import { turnOf } from "../../lock/dial";
import type { Chance } from "../../statistics/chance";
import { markPlay, type PlayMark } from "../../zeroing/playEstimate";
import { type ConditionRanges, drawCondition, ZeroLock } from "../../zeroing/zeroLock";
import { Store } from "../shell/store";

/** Stops from each side before an answer can be marked. */
export const STOPS_WANTED = 2;

/** "Find the play": a lock whose lost motion is to be found by stopping on the cam's mark from each side. */
export class PlaySession extends Store {
  lock: ZeroLock;
  stops: Readonly<Record<Turn, readonly Graduations[]>> = { right: [], left: [] };
  mark: PlayMark | null = null;
  /** Direction of the last motion, or null. */
  turn: Turn | null = null;
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
    this.lock.turnBy(by);
    this.changed();
  }

  /** Keeps where the dial stands, under the direction it was last turned in. */
  keepStop(): void {
    if (this.turn === null || this.mark !== null) return;
    this.stops = { ...this.stops, [this.turn]: [...this.stops[this.turn], this.lock.seen] };
    this.changed();
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
