import { type Graduations, signOf, type Turn, turnOf } from "../lock/dial";

/** Trembling that is no turning back, graduations. */
export const TREMBLE: Graduations = 0.15;

/**
 * The last motion in one direction and the one before it.
 *
 * Stricter than the runs of dialing: a zero is set within a hair, so anything beyond a tremble counts as turning back.
 * Mutable.
 */
export class ApproachRuns {
  turn: Turn | null = null;
  /** How far the motion before this one went, the other way, graduations; 0 where there was none since the last reading. */
  lengthBefore: Graduations = 0;
  /** Where the motion began. */
  private from: Graduations;
  /** From where it counts: its beginning, or the last reading if that is later. */
  private countsFrom: Graduations;
  private furthest: Graduations;

  constructor(position: Graduations) {
    this.from = position;
    this.countsFrom = position;
    this.furthest = position;
  }

  /** How far the dial has gone in its direction since it turned or was read, graduations. */
  get length(): Graduations {
    return Math.abs(this.furthest - this.countsFrom);
  }

  /** Takes in a move to a position, graduations. */
  moveTo(position: Graduations): void {
    const ahead = position - this.furthest;
    if (ahead === 0) return;
    this.turn ??= turnOf(ahead);
    if (ahead * signOf(this.turn) > 0) this.furthest = position;
    else if (Math.abs(ahead) > TREMBLE) this.turnBack(position);
  }

  /** Whatever counts, counts anew from here. */
  readingTaken(): void {
    this.countsFrom = this.furthest;
    this.lengthBefore = 0;
  }

  private turnBack(position: Graduations): void {
    const length = Math.abs(this.furthest - this.from);
    this.lengthBefore = length > TREMBLE ? length : 0;
    this.from = this.furthest;
    this.countsFrom = this.furthest;
    this.furthest = position;
    this.turn = turnOf(position - this.from);
  }
}
