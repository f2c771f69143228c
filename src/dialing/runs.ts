import { type Graduations, reading, signOf, type Turn, turnOf, wrap } from "../lock/dial";
import { exact, inMillionths } from "../lock/exact";

/** Motion in one direction, from one stop to the next. Positions are unwrapped graduations. */
export interface Run {
  readonly turn: Turn;
  readonly from: Graduations;
  /** Its furthest point: the stop, once the dial has turned back from it. */
  readonly to: Graduations;
}

/** Length of a run, graduations, >= 0. */
export function runLength({ from, to }: Run): Graduations {
  return Math.abs(exact(to - from));
}

/**
 * How often a number came to the index in a run, the stop included.
 *
 * Counts the marks y = number + m * perTurn with s(y - from) > tolerance and s(y - to) <= tolerance, where s is the
 * sign of the run: a number that the run starts on does not count, one that it stops just short of does.
 *
 * @param number - reading, graduations
 * @param perTurn - graduations in one turn
 * @param tolerance - stop tolerance, graduations
 */
export function arrivals(run: Run, number: Graduations, perTurn: number, tolerance: Graduations): number {
  const s = signOf(run.turn);
  const turn = inMillionths(perTurn);
  const reach = inMillionths(tolerance) - s * inMillionths(number);
  // Marks within `tolerance` beyond the start are the number the run starts on. Written out twice, because this is asked at
  // every move: the command line's loader makes a function with a name slow to create.
  const marksToEnd = Math.floor((s * inMillionths(run.to) + reach) / turn);
  const marksToStart = Math.floor((s * inMillionths(run.from) + reach) / turn);
  return Math.max(0, marksToEnd - marksToStart);
}

/**
 * How far a stop lies from its number, along the turn that made it.
 *
 * @param turn - direction of the run that ended in the stop
 * @param stop - unwrapped position of the stop, graduations
 * @param number - reading, graduations
 * @returns graduations in [-perTurn/2, perTurn/2]; positive ran past, negative stopped short
 */
export function stopError(turn: Turn, stop: Graduations, number: Graduations, perTurn: number): Graduations {
  return signOf(turn) * wrap(stop - number, perTurn) + 0;
}

/**
 * The next mark of a number, strictly beyond a position.
 *
 * @returns graduations along the turn, in (0, perTurn]
 */
export function distanceTo(number: Graduations, from: Graduations, turn: Turn, perTurn: number): Graduations {
  const along = reading(signOf(turn) * (number - from), perTurn);
  return along === 0 ? perTurn : along;
}

/** What a move did to the run it belongs to. */
export type RunChange = "none" | "begun" | "grown";

/**
 * Follows the dial and cuts its motion into runs, one motion event at a time.
 *
 * A run ends when the dial has come back more than `turnback` from its furthest point; smaller wobbles belong to it.
 */
export class RunFollower {
  position: Graduations;
  /** The run that the dial is in, or null before the first motion. */
  current: Run | null = null;
  private readonly turnback: Graduations;

  /**
   * @param position - where the dial stands, graduations
   * @param turnback - graduations, >= 0
   */
  constructor(position: Graduations, turnback: Graduations) {
    this.position = exact(position);
    this.turnback = exact(turnback);
  }

  /**
   * @param at - where the dial stands now, after a move in one direction
   * @returns `begun` when a new run has begun (the one before it ended at its furthest point), `grown` when the run
   *   got further, `none` when the dial rested or wobbled
   */
  moveTo(at: Graduations): RunChange {
    const before = this.position;
    const position = exact(at);
    this.position = position;
    if (this.current === null) return position === before ? "none" : this.begin(before, position);
    const { turn, from, to } = this.current;
    const further = signOf(turn) * exact(position - to);
    if (further > 0) {
      this.current = { turn, from, to: position };
      return "grown";
    }
    return -further > this.turnback ? this.begin(to, position) : "none";
  }

  private begin(from: Graduations, to: Graduations): RunChange {
    this.current = { turn: turnOf(to - from), from, to };
    return "begun";
  }
}
